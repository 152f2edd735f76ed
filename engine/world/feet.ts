import { atan, cos, sin } from '../math/trig.ts';
import { soleX, soleY } from '../touchdown/planarFeet.ts';
import type { Descent } from './descentRecord.ts';
import { groundHeight } from '../ground/terrain.ts';

/** World position of the center of a sole as the leg holds it [m]. Legs in the order of the lander. */
export function footX({ motion, feet }: Descent, leg: number): number {
  return motion.x + cos(motion.angle) * soleX(feet, leg) - sin(motion.angle) * soleY(feet, leg);
}

export function footY({ motion, feet }: Descent, leg: number): number {
  return motion.y + sin(motion.angle) * soleX(feet, leg) + cos(motion.angle) * soleY(feet, leg);
}

/** Height of the lowest foot above the ground straight below it [m]; negative when pressed. */
export function lowestFoot(descent: Descent): number {
  const { motion, feet, setup } = descent;
  const cosine = cos(motion.angle);
  const sine = sin(motion.angle);
  let least = Infinity;
  for (let leg = 0; leg < feet.count; leg++) {
    const x = soleX(feet, leg);
    const y = soleY(feet, leg);
    const height = motion.y + sine * x + cosine * y - groundHeight(setup.terrain, motion.x + cosine * x - sine * y);
    if (height < least) least = height;
  }
  return least;
}

/** x of the outermost foot to the left (-1) or the right (+1) [m]. */
function outerFoot(descent: Descent, side: -1 | 1): number {
  let outer = footX(descent, 0);
  for (let leg = 1; leg < descent.feet.count; leg++) {
    const x = footX(descent, leg);
    if (side * x > side * outer) outer = x;
  }
  return outer;
}

/** Slope of the ground from outer foot to outer foot, + where it rises to the right [rad]. A lander on its side: below its center. */
export function slopeUnderFeet(descent: Descent): number {
  const { terrain } = descent.setup;
  const left = outerFoot(descent, -1);
  const right = outerFoot(descent, 1);
  const half = descent.section.halfStance;
  const isUpright = cos(descent.motion.angle) > 0 && right - left > half;
  const from = isUpright ? left : descent.motion.x - half;
  const to = isUpright ? right : descent.motion.x + half;
  return atan((groundHeight(terrain, to) - groundHeight(terrain, from)) / (to - from));
}

/**
 * +1 when the center of mass stands right of all feet, −1 when left of all, else 0: the side over which it falls if
 * nothing else holds it. A lander lying beyond its side or head down has fallen over the side to which it turned.
 */
export function overhang(descent: Descent): -1 | 0 | 1 {
  const { x, angle } = descent.motion;
  if (cos(angle) <= 0) return angle < 0 ? 1 : -1;
  if (x > outerFoot(descent, 1)) return 1;
  return x < outerFoot(descent, -1) ? -1 : 0;
}
