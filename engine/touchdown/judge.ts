import {
  HOLD_OVERPOWERED,
  IDLE_THRUST_SHARE,
  QUIET_ENERGY_SHARE,
  QUIET_PENDULUM,
  QUIET_SLIDE_SHARE,
  REST_ACCELERATION_SHARE,
  REST_LOOKS,
  REST_SPEED_SHARE,
  TIP_SHARE,
} from './constants.ts';
import { TOUCH_NX, TOUCH_NZ, touchProfile } from './profileGround.ts';
import {
  ABOVE_EDGE,
  EDGE,
  EDGE_FOOT,
  footprintCorners,
  LEAST_LIFT,
  MARGIN,
  OUTWARD,
  plumbMargin,
} from './footprint.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  AX,
  AXIS_X,
  CONTACTS,
  FOOT_SIZE,
  GX,
  HOLD_X,
  HULL_CONTACTS,
  INVERSE_IX,
  LEG,
  LEVEL,
  LX,
  MX,
  PX,
  R11,
  SLIDE,
  SLIPPED,
  THRUST,
  TOUCHING,
  VX,
} from './layout.ts';
import { kineticEnergy } from './ledger.ts';
import { turningRate } from './lookAround.ts';
import type { RunCourse } from './runCourse.ts';
import type { StartedRun } from './startTouchdown.ts';
import type { TouchdownConditions } from './touchdownCase.ts';

/** One look at the run: margin, clearance, and whether the lander has tipped or come to rest. Reasons in README.md, "Outcome". */
export function judge(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  started: StartedRun,
  course: RunCourse,
): void {
  const { found } = kernel;
  const answer = course.margin;
  dropFolded(kernel);
  plumbMargin(kernel, started.gravity, answer);
  const margin = answer[MARGIN]!;
  course.clearance = Math.min(course.clearance, course.gap);
  if (course.firstContact !== undefined) {
    if (margin < course.leastMargin) {
      course.leastMargin = margin;
      course.leastMarginStep = course.step;
    }
    const tipping =
      margin < course.lastMargin &&
      found[CONTACTS]! > 0 &&
      turnsOutward(kernel, answer) &&
      isLost(kernel, conditions, started, answer);
    const lying = isAtRest(kernel, started, course) && margin <= 0 && found[HULL_CONTACTS]! > 0;
    if (course.tipDirection === undefined && (tipping || lying || isOverturned(kernel))) {
      course.tipDirection = [answer[OUTWARD]!, answer[OUTWARD + 1]!, answer[OUTWARD + 2]!];
    }
    course.settled = isSettled(kernel, started, course, answer);
    course.atRest = course.restLooks >= REST_LOOKS && (margin > 0 || lying);
  }
  course.lastMargin = margin;
  found[SLIPPED] = 0;
}

/** A leg that has folded away no longer counts in the footprint. */
function dropFolded(kernel: TouchdownKernel): void {
  const { feet, feetEnd, lander } = kernel;
  if (!hasFolded(kernel)) return;
  const offsets: number[] = [];
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) if (feet[o + LEVEL]! > -Infinity) offsets.push(o);
  if (offsets.length === 0) return;
  const legs = offsets.map((o) => feet[o + LEG]!);
  kernel.footprint = footprintCorners(lander, legs).map((leg) => offsets[legs.indexOf(leg)]!);
}

/** Looked at all the time, and hardly ever true: nothing is allocated for it. */
function hasFolded({ feet, footprint }: TouchdownKernel): boolean {
  for (let i = 0; i < footprint.length; i++) if (feet[footprint[i]! + LEVEL] === -Infinity) return true;
  return false;
}

/** True when the long axis points below the horizon, in flight or not. */
function isOverturned(kernel: TouchdownKernel): boolean {
  const { body, run } = kernel;
  let upward = 0;
  for (let i = 0; i < 3; i++) {
    const row = R11 + 3 * i;
    const along = body[row]! * run[AXIS_X]! + body[row + 1]! * run[AXIS_X + 1]! + body[row + 2]! * run[AXIS_X + 2]!;
    upward -= along * run[GX + i]!;
  }
  return upward < 0;
}

/** Angular momentum about the nearest edge tips: no force on its feet changes that, gravity and all other feet add to it. */
function turnsOutward(kernel: TouchdownKernel, answer: Float64Array): boolean {
  const { body, mass } = kernel;
  const [ex, ey, ez] = [answer[EDGE]!, answer[EDGE + 1]!, answer[EDGE + 2]!];
  const [fx, fy, fz] = [answer[EDGE_FOOT]!, answer[EDGE_FOOT + 1]!, answer[EDGE_FOOT + 2]!];
  const [vx, vy, vz] = [body[VX]!, body[VX + 1]!, body[VX + 2]!];
  let momentum = -mass * (ex * (fy * vz - fz * vy) + ey * (fz * vx - fx * vz) + ez * (fx * vy - fy * vx));
  for (let i = 0; i < 3; i++) {
    const along = ex * body[R11 + i]! + ey * body[R11 + 3 + i]! + ez * body[R11 + 6 + i]!;
    momentum += along * body[LX + i]!;
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
  let slides = found[SLIPPED]! > 0;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    if (feet[o + TOUCHING] === 0) continue;
    let nx = 0;
    let nz = 1;
    if (profile !== undefined) {
      const [bx, by, bz] = [feet[o]!, feet[o + 1]!, feet[o + 2]!];
      const x = body[PX]! + body[R11]! * bx + body[R11 + 1]! * by + body[R11 + 2]! * bz;
      const z = body[PX + 2]! + body[R11 + 6]! * bx + body[R11 + 7]! * by + body[R11 + 8]! * bz;
      touchProfile(profile, x, z, touch);
      nx = touch[TOUCH_NX]!;
      nz = touch[TOUCH_NZ]!;
    }
    const out = nx * answer[OUTWARD]! + nz * answer[OUTWARD + 2]!;
    const up = -(nx * run[GX]! + nz * run[GX + 2]!) / started.gravity;
    const steep = Math.sqrt(Math.max(0, 1 - up * up));
    if (mu * up < steep) slides = true;
    const level = up - mu * steep;
    const push = out + mu * Math.sqrt(Math.max(0, 1 - out * out));
    most = Math.max(most, level > 0 ? push / level : Infinity);
  }
  return slides ? most : 0;
}

/** True when nothing that acts can bring the plumb line back inside. */
function isLost(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  started: StartedRun,
  answer: Float64Array,
): boolean {
  const { run, found, mass, lander } = kernel;
  const outside = -answer[MARGIN]!;
  const weight = mass * started.gravity;
  // sliding pads right a body whose center of mass is inside the friction cone above them, which stands on the slope
  const cone = steepestPush(kernel, conditions, started, answer) * Math.max(0, answer[ABOVE_EDGE]!);
  if (outside <= cone + TIP_SHARE * started.scale) return false;
  // a hull point on the ground may prop the body up
  if (found[HULL_CONTACTS]! > 0) return false;
  if (run[THRUST]! > IDLE_THRUST_SHARE * weight) return false;
  const holding = run[HOLD_X] !== 0 || run[HOLD_X + 1] !== 0 || run[HOLD_X + 2] !== 0;
  return !holding || outside * weight > HOLD_OVERPOWERED * lander.engine.attitudeTorque;
}

/** True when the lander has moved too little to tip for longer than it could take to swing from one side to the other. */
function isSettled(kernel: TouchdownKernel, started: StartedRun, course: RunCourse, answer: Float64Array): boolean {
  const { run, feet, feetEnd, found, mass } = kernel;
  let slide = 0;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) slide += feet[o + SLIDE]!;
  const barrier = mass * started.gravity * answer[LEAST_LIFT]!;
  const acted = run[THRUST]! > 0 || run[HOLD_X] !== 0 || run[HOLD_X + 1] !== 0 || run[HOLD_X + 2] !== 0;
  const slides = slide - course.quietSlide > QUIET_SLIDE_SHARE * started.scale;
  if (acted || slides || kineticEnergy(kernel) > QUIET_ENERGY_SHARE * barrier) {
    course.quietSince = course.step;
    course.quietSlide = slide;
  }
  const quiet = (course.step - course.quietSince) * started.step;
  return quiet > QUIET_PENDULUM * Math.sqrt(started.scale / started.gravity) && found[CONTACTS]! > 0;
}

/** Counts looks in a row at which the lander hardly moves and hardly wants to. */
function isAtRest(kernel: TouchdownKernel, started: StartedRun, course: RunCourse): boolean {
  const { body, run, found } = kernel;
  const { gravity, scale } = started;
  let speed = 0;
  let acceleration = 0;
  let turning = 0;
  for (let i = 0; i < 3; i++) {
    speed += body[VX + i]! * body[VX + i]!;
    acceleration += body[AX + i]! * body[AX + i]!;
    const alpha = body[MX + i]! * run[INVERSE_IX + i]!;
    turning += alpha * alpha;
  }
  const slow = REST_SPEED_SHARE * Math.sqrt(gravity * scale);
  const soft = REST_ACCELERATION_SHARE * gravity;
  const still =
    found[CONTACTS]! + found[HULL_CONTACTS]! > 0 &&
    speed < slow * slow &&
    turningRate(kernel) * scale < slow &&
    acceleration < soft * soft &&
    turning * scale * scale < soft * soft;
  course.restLooks = still ? course.restLooks + 1 : 0;
  return course.restLooks >= REST_LOOKS;
}
