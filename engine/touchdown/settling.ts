/** Whether a lander stays as it stands: at rest, quiet, or without the energy to tip. Reasons in README.md, "Outcome". */
import {
  QUIET_ENERGY_SHARE,
  QUIET_PENDULUM,
  QUIET_SLIDE_SHARE,
  REST_ACCELERATION_SHARE,
  REST_LOOKS,
  REST_SPEED_SHARE,
  ROCKING_CHANGE_SHARE,
  ROCKING_PENDULUM,
  SURE_SHARE,
} from './constants.ts';
import { energyHeight, liftOverEdge } from './edgeBarrier.ts';
import { LEAST_LIFT } from './footprint.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  BODY_AX,
  FOOT_BOTTOMED,
  FOUND_CONTACTS,
  FOOT_CRUSH,
  FOOT_FOLDS,
  FOOT_SIZE,
  FOUND_HULL_CONTACTS,
  RUN_INVERSE_IX,
  FOOT_LATERAL,
  FOOT_LEG,
  FOOT_LEVEL,
  BODY_MX,
  FOOT_SINKAGE,
  FOOT_SLIDE,
  FOOT_STAGE,
  FOOT_STAGE_END,
  FOOT_STROKE,
  FOOT_UN,
  BODY_VX,
} from './layout.ts';
import { kineticEnergy } from './ledger.ts';
import { turningRate } from './lookAround.ts';
import type { RunCourse } from './runCourse.ts';
import type { StartedRun } from './startTouchdown.ts';
import { groundHolds, isPassive } from './tipping.ts';

/**
 * True when a lander inside its footprint has too little energy to pass over any edge: nothing acts that could give it more, and the ground
 * holds its pads.
 */
export function cannotTip(kernel: TouchdownKernel, started: StartedRun, margin: number): boolean {
  if (!(margin > 0 && kernel.found[FOUND_CONTACTS]! > 0 && isPassive(kernel, started))) return false;
  const height = energyHeight(kernel, started.gravity);
  return height < SURE_SHARE * liftOverEdge(kernel, started.gravity, height) && groundHolds(kernel, started);
}

/**
 * True when a lander that cannot tip has not the energy to use up another leg: for none is what its crushing still takes within
 * SURE_SHARE of what there is, if the center of mass came down by all that the leg would shorten and all that its highest pad is off the ground.
 *
 *   sum of force x length left  >  (E + m g (length left + gap)) / SURE_SHARE
 */
export function keepsItsGear(kernel: TouchdownKernel, gravity: number): boolean {
  const { feet, feetEnd, stages, mass } = kernel;
  const height = energyHeight(kernel, gravity);
  let gap = 0;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE)
    if (feet[o + FOOT_LEVEL]! > -Infinity) gap = Math.max(gap, -feet[o + FOOT_UN]!);
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    if (feet[o + FOOT_BOTTOMED]! > 0 || feet[o + FOOT_FOLDS]! > 0) continue;
    const forces = stages[feet[o + FOOT_LEG]!]!;
    let left = feet[o + FOOT_STAGE_END]! - feet[o + FOOT_STROKE]!;
    let work = feet[o + FOOT_CRUSH]! * left;
    for (let n = feet[o + FOOT_STAGE]! + 1; 2 * n < forces.length; n++) {
      left += forces[2 * n + 1]!;
      work += forces[2 * n]! * forces[2 * n + 1]!;
    }
    if (SURE_SHARE * work < mass * gravity * (height + left + gap)) return false;
  }
  return true;
}

/** True when a lander that cannot tip has rocked on for ROCKING_PENDULUM, and its legs and pads have hardly given way or slid. */
export function onlyRocks(kernel: TouchdownKernel, started: StartedRun, course: RunCourse): boolean {
  const { feet, feetEnd } = kernel;
  let changed = 0;
  let slide = 0;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    changed += feet[o + FOOT_STROKE]! + feet[o + FOOT_LATERAL]! + feet[o + FOOT_SINKAGE]!;
    slide += feet[o + FOOT_SLIDE]!;
  }
  const gaveWay = changed - course.changed > ROCKING_CHANGE_SHARE * started.scale;
  const slides = slide - course.unchangedSlide > QUIET_SLIDE_SHARE * started.scale;
  if (!course.staysUp || gaveWay || slides) {
    course.unchangedSince = course.step;
    course.unchangedSlide = slide;
    course.changed = changed;
  }
  const unchanged = (course.step - course.unchangedSince) * started.step;
  return unchanged > ROCKING_PENDULUM * Math.sqrt(started.scale / started.gravity);
}

/** True when the lander has moved too little to tip for longer than it could take to swing from one side to the other. */
export function isQuiet(
  kernel: TouchdownKernel,
  started: StartedRun,
  course: RunCourse,
  answer: Float64Array,
): boolean {
  const { feet, feetEnd, found, mass } = kernel;
  let slide = 0;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) slide += feet[o + FOOT_SLIDE]!;
  const barrier = mass * started.gravity * answer[LEAST_LIFT]!;
  const acted = !isPassive(kernel, started);
  const slides = slide - course.quietSlide > QUIET_SLIDE_SHARE * started.scale;
  if (acted || slides || kineticEnergy(kernel) > QUIET_ENERGY_SHARE * barrier) {
    course.quietSince = course.step;
    course.quietSlide = slide;
  }
  const quiet = (course.step - course.quietSince) * started.step;
  return quiet > QUIET_PENDULUM * Math.sqrt(started.scale / started.gravity) && found[FOUND_CONTACTS]! > 0;
}

/** Counts looks in a row at which the lander hardly moves and hardly wants to. */
export function isAtRest(kernel: TouchdownKernel, started: StartedRun, course: RunCourse): boolean {
  const { body, run, found } = kernel;
  const { gravity, scale } = started;
  let speed = 0;
  let acceleration = 0;
  let turning = 0;
  for (let i = 0; i < 3; i++) {
    speed += body[BODY_VX + i]! * body[BODY_VX + i]!;
    acceleration += body[BODY_AX + i]! * body[BODY_AX + i]!;
    const alpha = body[BODY_MX + i]! * run[RUN_INVERSE_IX + i]!;
    turning += alpha * alpha;
  }
  const slow = REST_SPEED_SHARE * Math.sqrt(gravity * scale);
  const soft = REST_ACCELERATION_SHARE * gravity;
  const still =
    found[FOUND_CONTACTS]! + found[FOUND_HULL_CONTACTS]! > 0 &&
    speed < slow * slow &&
    turningRate(kernel) * scale < slow &&
    acceleration < soft * soft &&
    turning * scale * scale < soft * soft;
  course.restLooks = still ? course.restLooks + 1 : 0;
  return course.restLooks >= REST_LOOKS;
}
