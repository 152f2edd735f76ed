import { atan, cos, sin } from '../math/trig.ts';
import type { Descent } from './descentRecord.ts';
import { groundHeight } from './ground.ts';

/** World position of the center of a sole as the leg holds it [m]. 0 is the left leg. */
export function footX(descent: Descent, leg: 0 | 1): number {
  const { motion, section, bulk } = descent;
  const { side, crushed } = descent.legs[leg];
  const x = side * (section.halfStance + section.leg.strut[0] * crushed);
  const y = section.leg.strut[1] * crushed - bulk.centerHeight;
  return motion.x + cos(motion.angle) * x - sin(motion.angle) * y;
}

export function footY(descent: Descent, leg: 0 | 1): number {
  const { motion, section, bulk } = descent;
  const { side, crushed } = descent.legs[leg];
  const x = side * (section.halfStance + section.leg.strut[0] * crushed);
  const y = section.leg.strut[1] * crushed - bulk.centerHeight;
  return motion.y + sin(motion.angle) * x + cos(motion.angle) * y;
}

/** Height of a foot above the plane that spans the ground under its pad, vertically [m]; negative when pressed. */
export function footHeight(descent: Descent, leg: 0 | 1): number {
  const { terrain } = descent.setup;
  const x = footX(descent, leg);
  const radius = descent.section.leg.padRadius;
  return footY(descent, leg) - (groundHeight(terrain, x - radius) + groundHeight(terrain, x + radius)) / 2;
}

/** Height of the lower foot above the ground below it [m]. */
export function lowestFoot(descent: Descent): number {
  return Math.min(footHeight(descent, 0), footHeight(descent, 1));
}

/** Slope of the ground from foot to foot, + where it rises to the right [rad]. A lander on its side: below its center. */
export function slopeUnderFeet(descent: Descent): number {
  const { terrain } = descent.setup;
  const left = footX(descent, 0);
  const right = footX(descent, 1);
  const half = descent.section.halfStance;
  const isUpright = right - left > half;
  const from = isUpright ? left : descent.motion.x - half;
  const to = isUpright ? right : descent.motion.x + half;
  return atan((groundHeight(terrain, to) - groundHeight(terrain, from)) / (to - from));
}

/**
 * +1 when the center of mass stands right of both feet, −1 when left of both, else 0: the side over which it falls if
 * nothing else holds it. A lander lying beyond its side or head down has fallen over the side to which it turned.
 */
export function overhang(descent: Descent): -1 | 0 | 1 {
  const { x, angle } = descent.motion;
  if (cos(angle) <= 0) return angle < 0 ? 1 : -1;
  const left = footX(descent, 0);
  const right = footX(descent, 1);
  if (x > left && x > right) return 1;
  return x < left && x < right ? -1 : 0;
}
