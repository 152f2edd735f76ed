/** The energy that it takes to bring the center of mass over an edge of the footprint, and the energy that there is. Derivation in README.md, "Outcome". */
import type { TouchdownKernel } from './kernel.ts';
import {
  FOOT_BEARING,
  FOOT_CRUSH,
  FOOT_X,
  RUN_GX,
  FOOT_KN,
  FOOT_KT,
  FOOT_LATERAL,
  FOOT_LATERAL_END,
  FOOT_LEG,
  FOOT_LEVEL,
  BODY_PX,
  BODY_R11,
  FOOT_SECONDARY,
  FOOT_SINKAGE,
  FOOT_SOIL_COEFFICIENT,
  RUN_SOIL_EXPONENT,
  FOOT_STAGE,
  FOOT_STAGE_END,
  FOOT_STROKE,
  FOOT_STRUT,
  FOOT_UN,
} from './layout.ts';
import { elasticEnergy, kineticEnergy } from './ledger.ts';
import { profileHeight } from './profileGround.ts';
import { workBeyondSoil } from './soil.ts';

/** Share of the load of an edge that is laid on one of its feet beyond what plane statics gives it [-]. */
const SHARE_SLACK = 0.1;

/** A pad in the air comes down as much farther down the slope as it is high, times this [-]: a quarter turn, about. */
const ROLL_SHARE = 1.5;

/**
 * Least height by which the center of mass has to rise from where it is to pass over an edge of the footprint whose pads stand on the ground [m]; negative
 * where it is higher already. What legs and ground could still give way is taken off. -Infinity when there is no such bound: fewer than three
 * corners, or ground that bears less than the edge would put on it.
 *
 *   t g_j + (1 - t) g_i + d sqrt(1 - s^2) - (sum of yielding) / m g                      least over edges i, j
 *
 * g  height of the ground under a pad above the center of mass      d  distance of the center of mass from the line through both pads
 * t  where it stands along that line, 0 at i, 1 at j                s  rise of the line over its length
 *
 * Whoever only asks whether it is above `atMost` has the answer sooner: some value that is not above it, where it is not.
 */
export function liftOverEdge(kernel: TouchdownKernel, gravity: number, atMost = -Infinity): number {
  const { body, feet, footprint, run, mass } = kernel;
  const corners = footprint.length;
  if (corners < 3) return -Infinity;
  const weight = mass * gravity;
  let least = Infinity;
  let ix = 0;
  let iy = 0;
  let iz = 0;
  let iGround = 0;
  for (let n = 0; n <= corners; n++) {
    const o = footprint[n === corners ? 0 : n]!;
    const bx = feet[o + FOOT_X]!;
    const by = feet[o + FOOT_X + 1]!;
    const bz = feet[o + FOOT_X + 2]!;
    const jx = body[BODY_R11]! * bx + body[BODY_R11 + 1]! * by + body[BODY_R11 + 2]! * bz;
    const jy = body[BODY_R11 + 3]! * bx + body[BODY_R11 + 4]! * by + body[BODY_R11 + 5]! * bz;
    const jz = body[BODY_R11 + 6]! * bx + body[BODY_R11 + 7]! * by + body[BODY_R11 + 8]! * bz;
    const up = -(run[RUN_GX]! * jx + run[RUN_GX + 1]! * jy + run[RUN_GX + 2]! * jz) / gravity;
    const jGround = up + aboveGround(kernel, o, jx, jz, gravity);
    if (n > 0) {
      const before = footprint[n - 1]!;
      const ex = jx - ix;
      const ey = jy - iy;
      const ez = jz - iz;
      const square = ex * ex + ey * ey + ez * ez;
      const t = -(ix * ex + iy * ey + iz * ez) / square;
      const cx = ix + t * ex;
      const cy = iy + t * ey;
      const cz = iz + t * ez;
      const distance = Math.sqrt(cx * cx + cy * cy + cz * cz);
      const rise = jGround - iGround;
      const level = Math.sqrt(Math.max(0, 1 - (rise * rise) / square));
      const unyielding = iGround + t * rise + distance * level;
      if (unyielding <= atMost) return unyielding;
      const share = Math.max(0, Math.min(1, t));
      const yielding =
        yieldUnder(kernel, before, Math.min(1, 1 - share + SHARE_SLACK) * weight, cx, cy, cz, distance) +
        yieldUnder(kernel, o, Math.min(1, share + SHARE_SLACK) * weight, cx, cy, cz, distance);
      const lift = unyielding - yielding / weight;
      if (lift < least) least = lift;
    }
    ix = jx;
    iy = jy;
    iz = jz;
    iGround = jGround;
  }
  return least;
}

/** Height to which kinetic and elastic energy would lift the center of mass [m]. */
export function energyHeight(kernel: TouchdownKernel, gravity: number): number {
  return (kineticEnergy(kernel) + elasticEnergy(kernel)) / (kernel.mass * gravity);
}

/** How much higher the ground under a pad is than the pad [m]: along the vertical on a profile, from its distance on a plane. */
function aboveGround(kernel: TouchdownKernel, o: number, x: number, z: number, gravity: number): number {
  const { body, feet, run, profile } = kernel;
  if (profile === undefined) {
    const steep = Math.sqrt(run[RUN_GX]! * run[RUN_GX]! + run[RUN_GX + 1]! * run[RUN_GX + 1]!);
    const un = feet[o + FOOT_UN]!;
    return (un * gravity + (un < 0 ? ROLL_SHARE * un * steep : 0)) / -run[RUN_GX + 2]!;
  }
  return profileHeight(profile, body[BODY_PX]! + x) + feet[o + FOOT_LEVEL]! - (body[BODY_PX + 2]! + z);
}

/**
 * The most that the energy of an edge can fall because the leg at o and the soil under it give way under `load`, over what giving way takes [J]: the
 * springs load^2 / 2k, and of each stage that bears less than its part of the load (load - force) x length left.
 */
function yieldUnder(
  kernel: TouchdownKernel,
  o: number,
  load: number,
  cx: number,
  cy: number,
  cz: number,
  distance: number,
): number {
  const { body, feet, run, stages } = kernel;
  let energy = (load * load) / (2 * Math.min(feet[o + FOOT_KN]!, feet[o + FOOT_KT]!));
  if (feet[o + FOOT_CRUSH]! < load) {
    const forces = stages[feet[o + FOOT_LEG]!]!;
    energy += (load - feet[o + FOOT_CRUSH]!) * (feet[o + FOOT_STAGE_END]! - feet[o + FOOT_STROKE]!);
    for (let n = feet[o + FOOT_STAGE]! + 1; 2 * n < forces.length && forces[2 * n]! < load; n++) {
      energy += (load - forces[2 * n]!) * forces[2 * n + 1]!;
    }
  }
  if (feet[o + FOOT_SECONDARY]! < load) {
    // across the strut the load has the sine of the angle between strut and vertical, which stands on the edge
    const sx = feet[o + FOOT_STRUT]!;
    const sy = feet[o + FOOT_STRUT + 1]!;
    const sz = feet[o + FOOT_STRUT + 2]!;
    const along =
      -(
        cx * (body[BODY_R11]! * sx + body[BODY_R11 + 1]! * sy + body[BODY_R11 + 2]! * sz) +
        cy * (body[BODY_R11 + 3]! * sx + body[BODY_R11 + 4]! * sy + body[BODY_R11 + 5]! * sz) +
        cz * (body[BODY_R11 + 6]! * sx + body[BODY_R11 + 7]! * sy + body[BODY_R11 + 8]! * sz)
      ) / distance;
    const across = load * Math.sqrt(Math.max(0, 1 - along * along));
    if (feet[o + FOOT_SECONDARY]! < across) {
      energy += (across - feet[o + FOOT_SECONDARY]!) * (feet[o + FOOT_LATERAL_END]! - feet[o + FOOT_LATERAL]!);
    }
  }
  if (feet[o + FOOT_BEARING]! < load) {
    if (run[RUN_SOIL_EXPONENT] === 0) return Infinity;
    energy += workBeyondSoil(load, feet[o + FOOT_SOIL_COEFFICIENT]!, run[RUN_SOIL_EXPONENT]!, feet[o + FOOT_SINKAGE]!);
  }
  return energy;
}
