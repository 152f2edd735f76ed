import type { TouchdownKernel } from './kernel.ts';
import {
  RUN_GX,
  HULL_TOUCHING,
  HULL_UN,
  HULL_SIZE,
  RUN_INVERSE_IX,
  BODY_LX,
  BODY_PX,
  BODY_R11,
  BODY_VX,
} from './layout.ts';
import { TOUCH_HEIGHT, touchProfile } from './profileGround.ts';

/** Least distance of the hull points from the ground [m], Infinity without any; notes the gap of those that do not touch. */
export function hullGap(kernel: TouchdownKernel): number {
  const { body, hull, touch, profile } = kernel;
  let least = Infinity;
  for (let o = 0; o < hull.length; o += HULL_SIZE) {
    const bx = hull[o]!;
    const by = hull[o + 1]!;
    const bz = hull[o + 2]!;
    let height = body[BODY_PX + 2]! + body[BODY_R11 + 6]! * bx + body[BODY_R11 + 7]! * by + body[BODY_R11 + 8]! * bz;
    if (profile !== undefined) {
      const x = body[BODY_PX]! + body[BODY_R11]! * bx + body[BODY_R11 + 1]! * by + body[BODY_R11 + 2]! * bz;
      touchProfile(profile, x, height, touch);
      height = touch[TOUCH_HEIGHT]!;
    }
    if (height < least) least = height;
    if (hull[o + HULL_TOUCHING] === 0) hull[o + HULL_UN] = -height;
  }
  return least;
}

/** Turning rate of the body [rad/s]. */
export function turningRate(kernel: TouchdownKernel): number {
  const { body, run } = kernel;
  const x = body[BODY_LX]! * run[RUN_INVERSE_IX]!;
  const y = body[BODY_LX + 1]! * run[RUN_INVERSE_IX + 1]!;
  const z = body[BODY_LX + 2]! * run[RUN_INVERSE_IX + 2]!;
  return Math.sqrt(x * x + y * y + z * z);
}

/**
 * A time for which no point that is `gap` or more away from the ground can reach it while nothing but gravity acts [s].
 *
 *   c t + g t^2 / 2 <= gap   =>   t = (sqrt(c^2 + 2 g gap) - c) / g
 *
 * c  bound of the closing speed: of the center of mass, plus rate x reach      g  gravity toward the ground
 * Exact for a body that does not turn over a plane.
 */
export function freeTime(kernel: TouchdownKernel, gap: number, rate: number): number {
  const { body, run, profile, reach } = kernel;
  const vx = body[BODY_VX]!;
  const vy = body[BODY_VX + 1]!;
  const vz = body[BODY_VX + 2]!;
  const closing = profile === undefined ? -vz : Math.sqrt(vx * vx + vy * vy + vz * vz);
  const c = closing + rate * reach;
  const g = -run[RUN_GX + 2]!;
  if (gap <= 0) return 0;
  const root = Math.sqrt(c * c + 2 * g * gap);
  // the form without cancellation
  return c > 0 ? (2 * gap) / (c + root) : (root - c) / g;
}
