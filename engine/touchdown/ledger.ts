import type { TouchdownKernel } from './kernel.ts';
import {
  AXIS_X,
  CRUSH_WORK,
  DAMPING_WORK,
  FOOT_SIZE,
  FRICTION_WORK,
  GX,
  H_TOUCHING,
  H_U1,
  H_U2,
  H_UN,
  HULL_K,
  HULL_SIZE,
  INVERSE_IX,
  KN,
  KT,
  LX,
  PX,
  R11,
  SOIL_WORK,
  HOLD_X,
  THRUST,
  THRUST_MOMENT,
  TOUCHING,
  U1,
  U2,
  UN,
  VX,
} from './layout.ts';
import type { EnergyLedger } from './touchdownCase.ts';

/** Sums that are kept from step to step when the ledger is on. */
export interface OpenLedger {
  readonly kineticStart: number;
  readonly potentialStart: number;
  leastSoFar: number;
  largestRise: number;
  thrustWork: number;
}

/** m v^2 / 2 + sum L_i^2 / (2 I_i) [J]. */
export function kineticEnergy(kernel: TouchdownKernel): number {
  const { body, run, mass } = kernel;
  let twice = 0;
  for (let i = 0; i < 3; i++) {
    const v = body[VX + i]!;
    const l = body[LX + i]!;
    twice += mass * v * v + l * l * run[INVERSE_IX + i]!;
  }
  return twice / 2;
}

/** -m g . x [J]. */
export function potentialEnergy(kernel: TouchdownKernel): number {
  const { body, run, mass } = kernel;
  return -mass * (run[GX]! * body[PX]! + run[GX + 1]! * body[PX + 1]! + run[GX + 2]! * body[PX + 2]!);
}

/** k_n u_n^2 / 2 + k_t u_t^2 / 2 of all feet and hull points in contact [J]. */
export function elasticEnergy(kernel: TouchdownKernel): number {
  const { feet, feetEnd, hull, run } = kernel;
  let twice = 0;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    const un = feet[o + UN]!;
    if (feet[o + TOUCHING] === 0 || un <= 0) continue;
    const u1 = feet[o + U1]!;
    const u2 = feet[o + U2]!;
    twice += feet[o + KN]! * un * un + feet[o + KT]! * (u1 * u1 + u2 * u2);
  }
  for (let o = 0; o < hull.length; o += HULL_SIZE) {
    const un = hull[o + H_UN]!;
    if (hull[o + H_TOUCHING] === 0 || un <= 0) continue;
    const u1 = hull[o + H_U1]!;
    const u2 = hull[o + H_U2]!;
    twice += run[HULL_K]! * (un * un + u1 * u1 + u2 * u2);
  }
  return twice / 2;
}

export function openLedger(kernel: TouchdownKernel): OpenLedger {
  const kineticStart = kineticEnergy(kernel);
  const potentialStart = potentialEnergy(kernel);
  const total = kineticStart + potentialStart + elasticEnergy(kernel);
  return { kineticStart, potentialStart, leastSoFar: total, largestRise: 0, thrustWork: 0 };
}

/** Power of thrust and thrusters on the lander now [W]. */
export function thrustPower(kernel: TouchdownKernel): number {
  const { body, run } = kernel;
  const thrust = run[THRUST]!;
  let power = 0;
  for (let i = 0; i < 3; i++) {
    const row = R11 + 3 * i;
    const along = body[row]! * run[AXIS_X]! + body[row + 1]! * run[AXIS_X + 1]! + body[row + 2]! * run[AXIS_X + 2]!;
    power += thrust * along * body[VX + i]!;
    power += (run[HOLD_X + i]! + thrust * run[THRUST_MOMENT + i]!) * body[LX + i]! * run[INVERSE_IX + i]!;
  }
  return power;
}

export function updateLedger(ledger: OpenLedger, kernel: TouchdownKernel, thrustWork: number): void {
  const total = kineticEnergy(kernel) + potentialEnergy(kernel) + elasticEnergy(kernel);
  ledger.thrustWork += thrustWork;
  ledger.leastSoFar = Math.min(ledger.leastSoFar, total);
  ledger.largestRise = Math.max(ledger.largestRise, total - ledger.leastSoFar);
}

export function closeLedger(ledger: OpenLedger, kernel: TouchdownKernel): EnergyLedger {
  const { found } = kernel;
  return {
    kineticStart: ledger.kineticStart,
    kineticEnd: kineticEnergy(kernel),
    gravityWork: ledger.potentialStart - potentialEnergy(kernel),
    elasticEnd: elasticEnergy(kernel),
    crush: found[CRUSH_WORK]!,
    soil: found[SOIL_WORK]!,
    friction: found[FRICTION_WORK]!,
    damping: found[DAMPING_WORK]!,
    thrustWork: ledger.thrustWork,
    largestRise: ledger.largestRise,
  };
}
