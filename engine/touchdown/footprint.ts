import type { Lander } from '../lander/lander.ts';
import type { Vec2 } from '../math/vec2.ts';
import { supportPolygon } from '../statics/supportPolygon.ts';
import type { TouchdownKernel } from './kernel.ts';
import { FOOT_SIZE, FOOT_X, RUN_GX, BODY_R11 } from './layout.ts';

/**
 * Corners of the footprint, counter-clockwise in plan, as indices into `legs` of the lander: the support polygon of those that are there, or the two
 * ends of their line, or the one foot.
 */
export function footprintCorners(lander: Lander, legs: readonly number[]): readonly number[] {
  const points = legs.map((leg): Vec2 => [lander.legs[leg]!.footpad[0], lander.legs[leg]!.footpad[1]]);
  const polygon = supportPolygon(points, [0, 0]);
  if (polygon.kind === 'polygon') return polygon.corners.map((corner) => legs[corner]!);
  const alongLine = legs.toSorted((a, b) => {
    const [p, q] = [lander.legs[a]!.footpad, lander.legs[b]!.footpad];
    return p[0] - q[0] || p[1] - q[1] || a - b;
  });
  const [first, last] = [alongLine[0]!, alongLine[alongLine.length - 1]!];
  return first === last ? [first] : [first, last];
}

/** Places in the answer of `plumbMargin`. */
export const MARGIN = 0;
/** Outward level unit vector of the nearest edge, ground frame. */
export const OUTWARD = 1;
/** Height of the center of mass above the middle of the nearest edge [m]. */
export const ABOVE_EDGE = 4;
/** Least lift of the center of mass that brings it over an edge [m]; 0 outside. */
export const LEAST_LIFT = 5;
/** Along the nearest edge, unit; and from the center of mass to a foot on it [m]. */
export const EDGE = 6;
export const EDGE_FOOT = 9;
export const MARGIN_SIZE = 12;

/**
 * Distance of the plumb line through the center of mass inside the nearest edge of the footprint, seen along gravity [m]; negative outside.
 *
 *   d = up . (r_i x e) / |e - (e.up) up|,   e = r_j - r_i                       plane geometry
 *
 * r  footpads from the center of mass, corners i, j counter-clockwise      up  against gravity, unit
 *
 * With two feet the margin is minus the distance to their line, with one minus the distance to the foot.
 */
export function plumbMargin(kernel: TouchdownKernel, gravity: number, answer: Float64Array): void {
  const { body, feet, run, footprint } = kernel;
  const ux = -run[RUN_GX]! / gravity;
  const uy = -run[RUN_GX + 1]! / gravity;
  const uz = -run[RUN_GX + 2]! / gravity;
  const corners = footprint.length;
  answer[MARGIN] = Infinity;
  answer[LEAST_LIFT] = Infinity;
  let ix = 0;
  let iy = 0;
  let iz = 0;
  for (let n = 0; n <= corners; n++) {
    const o = footprint[n === corners ? 0 : n]!;
    const bx = feet[o + FOOT_X]!;
    const by = feet[o + FOOT_X + 1]!;
    const bz = feet[o + FOOT_X + 2]!;
    const jx = body[BODY_R11]! * bx + body[BODY_R11 + 1]! * by + body[BODY_R11 + 2]! * bz;
    const jy = body[BODY_R11 + 3]! * bx + body[BODY_R11 + 4]! * by + body[BODY_R11 + 5]! * bz;
    const jz = body[BODY_R11 + 6]! * bx + body[BODY_R11 + 7]! * by + body[BODY_R11 + 8]! * bz;
    if (n > 0) {
      const ex = jx - ix;
      const ey = jy - iy;
      const ez = jz - iz;
      // outward: e x up
      const outX = ey * uz - ez * uy;
      const outY = ez * ux - ex * uz;
      const outZ = ex * uy - ey * ux;
      const length = Math.sqrt(outX * outX + outY * outY + outZ * outZ);
      const margin = (ix * outX + iy * outY + iz * outZ) / length;
      const above = -((ix + jx) * ux + (iy + jy) * uy + (iz + jz) * uz) / 2;
      const lift = margin > 0 ? Math.sqrt(margin * margin + above * above) - above : 0;
      if (lift < answer[LEAST_LIFT]) answer[LEAST_LIFT] = lift;
      if (margin < answer[MARGIN]) {
        answer[MARGIN] = margin;
        answer[OUTWARD] = outX / length;
        answer[OUTWARD + 1] = outY / length;
        answer[OUTWARD + 2] = outZ / length;
        answer[ABOVE_EDGE] = above;
        const whole = Math.sqrt(ex * ex + ey * ey + ez * ez);
        answer[EDGE] = ex / whole;
        answer[EDGE + 1] = ey / whole;
        answer[EDGE + 2] = ez / whole;
        answer[EDGE_FOOT] = ix;
        answer[EDGE_FOOT + 1] = iy;
        answer[EDGE_FOOT + 2] = iz;
      }
    }
    ix = jx;
    iy = jy;
    iz = jz;
  }
  if (corners === 1) marginOfOneFoot(ix, iy, iz, ux, uy, uz, answer);
}

function marginOfOneFoot(
  x: number,
  y: number,
  z: number,
  ux: number,
  uy: number,
  uz: number,
  answer: Float64Array,
): void {
  const along = x * ux + y * uy + z * uz;
  const [levelX, levelY, levelZ] = [x - along * ux, y - along * uy, z - along * uz];
  const distance = Math.sqrt(levelX * levelX + levelY * levelY + levelZ * levelZ);
  const scale = distance > 0 ? -1 / distance : 0;
  answer[MARGIN] = -distance;
  answer[LEAST_LIFT] = 0;
  answer[OUTWARD] = levelX * scale;
  answer[OUTWARD + 1] = levelY * scale;
  answer[OUTWARD + 2] = levelZ * scale;
  answer[ABOVE_EDGE] = -along;
  // e x up = outward
  answer[EDGE] = uy * answer[OUTWARD + 2]! - uz * answer[OUTWARD + 1]!;
  answer[EDGE + 1] = uz * answer[OUTWARD] - ux * answer[OUTWARD + 2]!;
  answer[EDGE + 2] = ux * answer[OUTWARD + 1]! - uy * answer[OUTWARD];
  answer[EDGE_FOOT] = x;
  answer[EDGE_FOOT + 1] = y;
  answer[EDGE_FOOT + 2] = z;
}

/** Offset in kernel.feet of a leg's record, when `legs` are packed there in order. */
export function footOffset(legs: readonly number[], leg: number): number {
  return legs.indexOf(leg) * FOOT_SIZE;
}
