/** The energy that it takes to bring the center of mass over an edge of the footprint, and the energy that there is. Derivation in README.md, "Outcome". */
import type { TouchdownKernel } from './kernel.ts';
import {
  BEARING,
  CRUSH,
  FX,
  GX,
  KN,
  KT,
  LATERAL,
  LATERAL_END,
  LEG,
  LEVEL,
  PX,
  R11,
  SECONDARY,
  SINKAGE,
  SOIL_COEFFICIENT,
  SOIL_EXPONENT,
  STAGE,
  STAGE_END,
  STROKE,
  STRUT,
  UN,
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
 */
export function liftOverEdge(kernel: TouchdownKernel, gravity: number): number {
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
    const bx = feet[o + FX]!;
    const by = feet[o + FX + 1]!;
    const bz = feet[o + FX + 2]!;
    const jx = body[R11]! * bx + body[R11 + 1]! * by + body[R11 + 2]! * bz;
    const jy = body[R11 + 3]! * bx + body[R11 + 4]! * by + body[R11 + 5]! * bz;
    const jz = body[R11 + 6]! * bx + body[R11 + 7]! * by + body[R11 + 8]! * bz;
    const up = -(run[GX]! * jx + run[GX + 1]! * jy + run[GX + 2]! * jz) / gravity;
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
      const share = Math.max(0, Math.min(1, t));
      const yielding =
        yieldUnder(kernel, before, Math.min(1, 1 - share + SHARE_SLACK) * weight, cx, cy, cz, distance) +
        yieldUnder(kernel, o, Math.min(1, share + SHARE_SLACK) * weight, cx, cy, cz, distance);
      const lift = iGround + t * rise + distance * level - yielding / weight;
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
    const steep = Math.sqrt(run[GX]! * run[GX]! + run[GX + 1]! * run[GX + 1]!);
    const un = feet[o + UN]!;
    return (un * gravity + (un < 0 ? ROLL_SHARE * un * steep : 0)) / -run[GX + 2]!;
  }
  return profileHeight(profile, body[PX]! + x) + feet[o + LEVEL]! - (body[PX + 2]! + z);
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
  let energy = (load * load) / (2 * Math.min(feet[o + KN]!, feet[o + KT]!));
  if (feet[o + CRUSH]! < load) {
    const forces = stages[feet[o + LEG]!]!;
    energy += (load - feet[o + CRUSH]!) * (feet[o + STAGE_END]! - feet[o + STROKE]!);
    for (let n = feet[o + STAGE]! + 1; 2 * n < forces.length && forces[2 * n]! < load; n++) {
      energy += (load - forces[2 * n]!) * forces[2 * n + 1]!;
    }
  }
  if (feet[o + SECONDARY]! < load) {
    // across the strut the load has the sine of the angle between strut and vertical, which stands on the edge
    const sx = feet[o + STRUT]!;
    const sy = feet[o + STRUT + 1]!;
    const sz = feet[o + STRUT + 2]!;
    const along =
      -(
        cx * (body[R11]! * sx + body[R11 + 1]! * sy + body[R11 + 2]! * sz) +
        cy * (body[R11 + 3]! * sx + body[R11 + 4]! * sy + body[R11 + 5]! * sz) +
        cz * (body[R11 + 6]! * sx + body[R11 + 7]! * sy + body[R11 + 8]! * sz)
      ) / distance;
    const across = load * Math.sqrt(Math.max(0, 1 - along * along));
    if (feet[o + SECONDARY]! < across) {
      energy += (across - feet[o + SECONDARY]!) * (feet[o + LATERAL_END]! - feet[o + LATERAL]!);
    }
  }
  if (feet[o + BEARING]! < load) {
    if (run[SOIL_EXPONENT] === 0) return Infinity;
    energy += workBeyondSoil(load, feet[o + SOIL_COEFFICIENT]!, run[SOIL_EXPONENT]!, feet[o + SINKAGE]!);
  }
  return energy;
}
