import type { TouchdownKernel } from './kernel.ts';
import {
  RUN_AXIS_X,
  FOUND_CRUSH_WORK,
  FOUND_DAMPING_WORK,
  FOOT_SIZE,
  FOUND_FRICTION_WORK,
  RUN_GX,
  HULL_TOUCHING,
  HULL_U1,
  HULL_U2,
  HULL_UN,
  RUN_HULL_K,
  HULL_SIZE,
  RUN_INVERSE_IX,
  FOOT_KN,
  FOOT_KT,
  BODY_LX,
  BODY_PX,
  BODY_R11,
  FOUND_SOIL_WORK,
  RUN_HOLD_X,
  RUN_THRUST,
  RUN_THRUST_MOMENT,
  FOOT_TOUCHING,
  FOOT_U1,
  FOOT_U2,
  FOOT_UN,
  BODY_VX,
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
    const v = body[BODY_VX + i]!;
    const l = body[BODY_LX + i]!;
    twice += mass * v * v + l * l * run[RUN_INVERSE_IX + i]!;
  }
  return twice / 2;
}

/** -m g . x [J]. */
function potentialEnergy(kernel: TouchdownKernel): number {
  const { body, run, mass } = kernel;
  return (
    -mass *
    (run[RUN_GX]! * body[BODY_PX]! + run[RUN_GX + 1]! * body[BODY_PX + 1]! + run[RUN_GX + 2]! * body[BODY_PX + 2]!)
  );
}

/** k_n u_n^2 / 2 + k_t u_t^2 / 2 of all feet and hull points in contact [J]. */
export function elasticEnergy(kernel: TouchdownKernel): number {
  const { feet, feetEnd, hull, run } = kernel;
  let twice = 0;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    const un = feet[o + FOOT_UN]!;
    if (feet[o + FOOT_TOUCHING] === 0 || un <= 0) continue;
    const u1 = feet[o + FOOT_U1]!;
    const u2 = feet[o + FOOT_U2]!;
    twice += feet[o + FOOT_KN]! * un * un + feet[o + FOOT_KT]! * (u1 * u1 + u2 * u2);
  }
  for (let o = 0; o < hull.length; o += HULL_SIZE) {
    const un = hull[o + HULL_UN]!;
    if (hull[o + HULL_TOUCHING] === 0 || un <= 0) continue;
    const u1 = hull[o + HULL_U1]!;
    const u2 = hull[o + HULL_U2]!;
    twice += run[RUN_HULL_K]! * (un * un + u1 * u1 + u2 * u2);
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
  const thrust = run[RUN_THRUST]!;
  let power = 0;
  for (let i = 0; i < 3; i++) {
    const row = BODY_R11 + 3 * i;
    const along =
      body[row]! * run[RUN_AXIS_X]! + body[row + 1]! * run[RUN_AXIS_X + 1]! + body[row + 2]! * run[RUN_AXIS_X + 2]!;
    power += thrust * along * body[BODY_VX + i]!;
    power +=
      (run[RUN_HOLD_X + i]! + thrust * run[RUN_THRUST_MOMENT + i]!) * body[BODY_LX + i]! * run[RUN_INVERSE_IX + i]!;
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
    crush: found[FOUND_CRUSH_WORK]!,
    soil: found[FOUND_SOIL_WORK]!,
    friction: found[FOUND_FRICTION_WORK]!,
    damping: found[FOUND_DAMPING_WORK]!,
    thrustWork: ledger.thrustWork,
    largestRise: ledger.largestRise,
  };
}
