/** Whether a lander is past help: by its angular momentum about the edge, or by its energy. Reasons in README.md, "Outcome". */
import { HOLD_OVERPOWERED, HULL_WATCH_SHARE, IDLE_THRUST_SHARE, TIP_SHARE } from './constants.ts';
import { energyHeight, liftOverEdge } from './edgeBarrier.ts';
import { ABOVE_EDGE, EDGE, EDGE_FOOT, MARGIN, OUTWARD } from './footprint.ts';
import { mayBeCaught } from './hullCatch.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  RUN_AXIS_X,
  FOUND_CONTACTS,
  FOOT_SIZE,
  RUN_FRICTION,
  RUN_GX,
  RUN_HOLD_X,
  FOUND_HULL_CONTACTS,
  BODY_LX,
  FOOT_NORMAL_X,
  FOOT_NORMAL_Z,
  BODY_PX,
  BODY_R11,
  FOUND_SLIPPED,
  RUN_THRUST,
  FOOT_TOUCHING,
  BODY_VX,
} from './layout.ts';
import { TOUCH_NX, TOUCH_NZ, touchProfile } from './profileGround.ts';
import type { RunCourse } from './runCourse.ts';
import type { StartedRun } from './startTouchdown.ts';
import type { TouchdownConditions } from './touchdownCase.ts';

/** True when nothing that acts can bring the plumb line back inside. */
export function isTipping(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  started: StartedRun,
  { margin: answer, lastMargin, gap }: RunCourse,
): boolean {
  const { found, hull, footprint } = kernel;
  const overturned = isOverturned(kernel);
  const outside = -answer[MARGIN]! > TIP_SHARE * started.scale;
  if (!overturned && !outside) return false;
  const energy = energyHeight(kernel, started.gravity);
  const lift = liftOverEdge(kernel, started.gravity);
  // too little energy to come back over any edge, and no slide that could give more
  const touching = found[FOUND_CONTACTS]! + found[FOUND_HULL_CONTACTS]! > 0;
  const passive = isPassive(kernel, started) && groundHolds(kernel, started);
  if (outside && touching && passive && energy < lift) return true;
  if (overturned && (energy < lift || hull.length === 0 || footprint.length < 3)) return true;
  return (
    answer[MARGIN]! < lastMargin &&
    found[FOUND_CONTACTS]! > 0 &&
    // a hull point on the ground, or bouncing on it, may prop the body up
    gap > HULL_WATCH_SHARE * started.scale &&
    turnsOutward(kernel, answer) &&
    isLost(kernel, conditions, started, answer) &&
    !mayBeCaught(kernel, started, answer, energy, lift)
  );
}

/** True when the long axis points below the horizon, in flight or not. */
function isOverturned(kernel: TouchdownKernel): boolean {
  return uprightness(kernel) < 0;
}

/** Cosine of the lean of the long axis from the vertical, times gravity [m/s²]. */
export function uprightness(kernel: TouchdownKernel): number {
  const { body, run } = kernel;
  let upward = 0;
  for (let i = 0; i < 3; i++) {
    const row = BODY_R11 + 3 * i;
    const along =
      body[row]! * run[RUN_AXIS_X]! + body[row + 1]! * run[RUN_AXIS_X + 1]! + body[row + 2]! * run[RUN_AXIS_X + 2]!;
    upward -= along * run[RUN_GX + i]!;
  }
  return upward;
}

/** Angular momentum about the nearest edge tips: no force on its feet changes that, gravity and all other feet add to it. */
function turnsOutward(kernel: TouchdownKernel, answer: Float64Array): boolean {
  const { body, mass } = kernel;
  const [ex, ey, ez] = [answer[EDGE]!, answer[EDGE + 1]!, answer[EDGE + 2]!];
  const [fx, fy, fz] = [answer[EDGE_FOOT]!, answer[EDGE_FOOT + 1]!, answer[EDGE_FOOT + 2]!];
  const [vx, vy, vz] = [body[BODY_VX]!, body[BODY_VX + 1]!, body[BODY_VX + 2]!];
  let momentum = -mass * (ex * (fy * vz - fz * vy) + ey * (fz * vx - fx * vz) + ez * (fx * vy - fy * vx));
  for (let i = 0; i < 3; i++) {
    const along = ex * body[BODY_R11 + i]! + ey * body[BODY_R11 + 3 + i]! + ez * body[BODY_R11 + 6 + i]!;
    momentum += along * body[BODY_LX + i]!;
  }
  return momentum > 0;
}

/**
 * Most that the push of a sliding pad leans outward, horizontal over vertical [-]; 0 when none slides or must slide.
 *
 *   (n.o + mu sqrt(1 - (n.o)^2)) / (n.up - mu sqrt(1 - (n.up)^2))       down the fall line tan(slope + friction angle)
 *
 * n  normal of the ground      o  outward      mu  friction
 */
function steepestPush(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  started: StartedRun,
  answer: Float64Array,
): number {
  const { run, body, feet, feetEnd, touch, profile, found } = kernel;
  const mu = conditions.ground.friction;
  let most = 0;
  let slides = found[FOUND_SLIPPED]! > 0;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    if (feet[o + FOOT_TOUCHING] === 0) continue;
    let nx = 0;
    let nz = 1;
    if (profile !== undefined) {
      const [bx, by, bz] = [feet[o]!, feet[o + 1]!, feet[o + 2]!];
      const x = body[BODY_PX]! + body[BODY_R11]! * bx + body[BODY_R11 + 1]! * by + body[BODY_R11 + 2]! * bz;
      const z = body[BODY_PX + 2]! + body[BODY_R11 + 6]! * bx + body[BODY_R11 + 7]! * by + body[BODY_R11 + 8]! * bz;
      touchProfile(profile, x, z, touch);
      nx = touch[TOUCH_NX]!;
      nz = touch[TOUCH_NZ]!;
    }
    const out = nx * answer[OUTWARD]! + nz * answer[OUTWARD + 2]!;
    const up = -(nx * run[RUN_GX]! + nz * run[RUN_GX + 2]!) / started.gravity;
    const steep = Math.sqrt(Math.max(0, 1 - up * up));
    if (mu * up < steep) slides = true;
    const level = up - mu * steep;
    const push = out + mu * Math.sqrt(Math.max(0, 1 - out * out));
    most = Math.max(most, level > 0 ? push / level : Infinity);
  }
  return slides ? most : 0;
}

/** True when no push of the pads, thrust or thrusters can bring the plumb line back inside. */
function isLost(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  started: StartedRun,
  answer: Float64Array,
): boolean {
  const { run, mass, lander } = kernel;
  const outside = -answer[MARGIN]!;
  const weight = mass * started.gravity;
  // sliding pads right a body whose center of mass is inside the friction cone above them, which stands on the slope
  const cone = steepestPush(kernel, conditions, started, answer) * Math.max(0, answer[ABOVE_EDGE]!);
  if (outside <= cone + TIP_SHARE * started.scale) return false;
  if (run[RUN_THRUST]! > IDLE_THRUST_SHARE * weight) return false;
  const holding = run[RUN_HOLD_X] !== 0 || run[RUN_HOLD_X + 1] !== 0 || run[RUN_HOLD_X + 2] !== 0;
  return !holding || outside * weight > HOLD_OVERPOWERED * lander.engine.attitudeTorque;
}

/** True when neither thrust nor thrusters act. */
export function isPassive({ run, mass }: TouchdownKernel, { gravity }: StartedRun): boolean {
  const idle = run[RUN_THRUST]! <= IDLE_THRUST_SHARE * mass * gravity;
  return idle && run[RUN_HOLD_X] === 0 && run[RUN_HOLD_X + 1] === 0 && run[RUN_HOLD_X + 2] === 0;
}

/** True when no pad in contact has to slide down: the friction bears more than the slope under it asks. */
export function groundHolds(kernel: TouchdownKernel, { gravity }: StartedRun): boolean {
  const { feet, feetEnd, run } = kernel;
  const mu = run[RUN_FRICTION]!;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    if (feet[o + FOOT_TOUCHING] === 0) continue;
    const up = -(feet[o + FOOT_NORMAL_X]! * run[RUN_GX]! + feet[o + FOOT_NORMAL_Z]! * run[RUN_GX + 2]!) / gravity;
    if (mu * up <= Math.sqrt(Math.max(0, 1 - up * up))) return false;
  }
  return true;
}
