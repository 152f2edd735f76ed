import { exp } from '../math/exponential.ts';
import { multiply, rotate, rotateBack, type Quaternion } from '../math/quaternion.ts';
import { cos, sin } from '../math/trig.ts';
import { add3, dot3, length3, scale3, subtract3, type Vec3 } from '../math/vec3.ts';
import { attitudeOf, quaternionOf } from './attitude.ts';
import {
  DEFAULT_DAMPING,
  DEFAULT_FOLD_FACTOR,
  DEFAULT_STEP,
  HULL_DAMPING,
  HULL_PHASE_SQUARED,
  HULL_SUPPORTS,
  MAX_PHASE_SQUARED,
  REBOUND_SHARE,
  TIME_LIMIT_PENDULUM,
} from './constants.ts';
import { footOffset, footprintCorners } from './footprint.ts';
import { groundFrame, profileFall, toGround, type GroundFrame } from './groundFrame.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  FOOT_AREA,
  RUN_AXIS_X,
  FOOT_BEARING,
  FOOT_BOTTOMED_STIFFNESS,
  FOOT_CN,
  FOOT_CRUSH,
  FOOT_CT,
  FOOT_FOLDS,
  FOOT_SIZE,
  RUN_FRICTION,
  FOOT_X,
  RUN_GX,
  RUN_HULL_C,
  RUN_HULL_K,
  HULL_SIZE,
  RUN_INVERSE_IX,
  RUN_INVERSE_MASS,
  FOOT_KN,
  FOOT_KT,
  FOOT_LATERAL_STIFFNESS,
  RUN_LEDGER_ON,
  FOOT_LEG_STIFFNESS,
  FOOT_LEVEL,
  BODY_LX,
  BODY_PX,
  BODY_QW,
  FOOT_SECONDARY,
  FOOT_SOIL_COEFFICIENT,
  RUN_SOIL_EXPONENT,
  FOOT_STAGE_END,
  RUN_STEP,
  RUN_THRUST_DECAY,
  RUN_THRUST_MOMENT,
  FOOT_UN,
  BODY_VX,
} from './layout.ts';
import { prepareProfile, profileHeight, TOUCH_HEIGHT, touchProfile } from './profileGround.ts';
import { bekkerCoefficient } from './soil.ts';
import type { Soil } from '../ground/soil.ts';
import type { TouchdownConditions, TouchdownOptions } from './touchdownCase.ts';

/** The lander starts this share of its own size off the ground, so that rounding puts no point into it [-]. */
const HAIR = 1e-12;

/** On ground steeper than this (vertical against normal distance) a rock under a pad is not placed exactly [-]. */
const STEEPEST = 16;
const BISECTIONS = 60;

/** What the outer loop of a run needs besides the kernel. */
export interface StartedRun {
  readonly frame: GroundFrame;
  readonly gravity: number;
  readonly step: number;
  readonly stepLimit: number;
  /** Level unit vector that counts as downhill, ground frame. */
  readonly downhill: Vec3;
  /** Length that scales thresholds: height of the center of mass above the footpad plane [m]. */
  readonly scale: number;
  /** Share of the energy of an impact on the hull that may come back [-]. */
  readonly rebound: number;
  /** Until cut-off [N]. */
  readonly thrust: number;
  /** From first contact to cut-off. */
  readonly cutoffSteps: number;
  /** Factor by which thrust falls off each step after cut-off [-]. */
  readonly decay: number;
}

/** Fills the kernel's arrays for one run. */
export function startTouchdown(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  options: TouchdownOptions,
): StartedRun {
  const { lander, run, body, found } = kernel;
  const { gravity, ground, state } = conditions;
  const frame = groundFrame(ground);
  body.fill(0);
  run.fill(0);
  found.fill(0);
  kernel.profile = ground.shape.kind === 'profile' ? prepareProfile(ground.shape.terrain) : undefined;
  placeLegs(kernel, conditions);
  const damping = options.damping ?? DEFAULT_DAMPING;
  const step = chooseStep(kernel, options.step ?? DEFAULT_STEP, damping);
  fillRun(kernel, conditions, options, frame, step);
  setDamping(kernel, damping, step);
  const center = kernel.center[2];
  const scale = Math.abs(center) > 0 ? Math.abs(center) : kernel.reach;
  const fall = kernel.profile === undefined ? frame.fall : fallUnder(kernel, state.position?.[0] ?? 0);
  const azimuth = state.travelAzimuth;
  const travel: Vec3 = azimuth === undefined ? (fall ?? fallDirection(conditions)) : [cos(azimuth), sin(azimuth), 0];
  placeBody(kernel, conditions, frame, travel);
  const timeLimit = options.timeLimit ?? TIME_LIMIT_PENDULUM * Math.sqrt(scale / gravity) + fallTime(conditions);
  const timeConstant = conditions.thrust?.timeConstant ?? lander.engine.lag;
  const forward = state.horizontalSpeed < 0 ? scale3(travel, -1) : travel;
  return {
    frame,
    gravity,
    step,
    stepLimit: Math.ceil(timeLimit / step),
    downhill: toGround(frame, fall ?? forward),
    scale,
    rebound: damping > 0 ? REBOUND_SHARE : 1,
    thrust: conditions.thrust?.thrust ?? 0,
    cutoffSteps: Math.round((conditions.thrust?.cutoffDelay ?? 0) / step),
    decay: timeConstant > 0 ? exp(-step / timeConstant) : 0,
  };
}

/** Longest free fall before contact [s], for the default time limit. */
function fallTime(conditions: TouchdownConditions): number {
  const { state, gravity } = conditions;
  const height = state.height ?? 0;
  const v = state.descentRate;
  return (-v + Math.sqrt(v * v + 2 * gravity * height) + (v < 0 ? -2 * v : 0)) / gravity;
}

function fallDirection(conditions: TouchdownConditions): Vec3 {
  const { shape } = conditions.ground;
  const azimuth = shape.kind === 'plane' ? (shape.fallAzimuth ?? 0) : 0;
  return [cos(azimuth), sin(azimuth), 0];
}

function fallUnder(kernel: TouchdownKernel, x: number): Vec3 | undefined {
  return profileFall(kernel.profile!, x - kernel.reach, x + kernel.reach);
}

/** Copies the legs that are there, in the condition in which they are. */
function placeLegs(kernel: TouchdownKernel, conditions: TouchdownConditions): void {
  const { lander, feet, legsAsBuilt, run } = kernel;
  const soil = conditions.ground.soil ?? { kind: 'rigid' };
  const there: number[] = [];
  lander.legs.forEach((leg, index) => {
    const condition = conditions.legs?.find((one) => one.leg === index);
    if (condition?.kind === 'missing') return;
    const o = there.length * FOOT_SIZE;
    there.push(index);
    feet.set(legsAsBuilt.subarray(index * FOOT_SIZE, (index + 1) * FOOT_SIZE), o);
    const factor = condition?.kind === 'soft' ? condition.factor : 1;
    const stages = kernel.stages[index]!;
    leg.stages.forEach((stage, n) => {
      stages[2 * n] = stage.force * factor;
      stages[2 * n + 1] = stage.stroke;
    });
    feet[o + FOOT_CRUSH] = stages[0]!;
    feet[o + FOOT_STAGE_END] = stages[1]!;
    if (condition?.kind === 'not latched') {
      feet[o + FOOT_CRUSH] = stages[0]! * (condition.factor ?? DEFAULT_FOLD_FACTOR);
      feet[o + FOOT_STAGE_END] = length3(subtract3(leg.hip, leg.footpad));
      feet[o + FOOT_FOLDS] = 1;
    }
    feet[o + FOOT_SECONDARY] = feet[o + FOOT_SECONDARY]! * factor;
    setSoil(feet, o, soil, leg.footpadDiameter);
    for (const spot of conditions.ground.underPad ?? []) {
      if (spot.leg === index) feet[o + FOOT_LEVEL] = feet[o + FOOT_LEVEL]! + spot.height;
    }
  });
  run[RUN_SOIL_EXPONENT] = soil.kind === 'bekker' ? soil.exponent : 0;
  kernel.feetEnd = there.length * FOOT_SIZE;
  kernel.footprint = footprintCorners(lander, there).map((leg) => footOffset(there, leg));
}

/** Series of leg and soil, and the force at which the soil gives. */
function setSoil(feet: Float64Array, o: number, soil: Soil, padDiameter: number): void {
  const give = soil.kind === 'rigid' ? 0 : 1 / soil.stiffness;
  feet[o + FOOT_KN] = 1 / (1 / feet[o + FOOT_LEG_STIFFNESS]! + give);
  feet[o + FOOT_KT] = 1 / (1 / feet[o + FOOT_LATERAL_STIFFNESS]! + give);
  if (soil.kind === 'rigid') {
    feet[o + FOOT_BEARING] = Infinity;
  } else if (soil.kind === 'bearing') {
    feet[o + FOOT_BEARING] = soil.strength * feet[o + FOOT_AREA]!;
    feet[o + FOOT_SOIL_COEFFICIENT] = feet[o + FOOT_BEARING]!;
  } else {
    feet[o + FOOT_BEARING] = 0;
    feet[o + FOOT_SOIL_COEFFICIENT] = bekkerCoefficient(soil.cohesive, soil.frictional, padDiameter);
  }
}

/**
 * The wanted step, or a shorter one at which the contacts together stay well inside the stability of the scheme.
 *
 *   K h^2 + C h <= MAX_PHASE_SQUARED,   K = sum k (1/m + r^2 / I_least),   C = sum c (1/m + r^2 / I_least)
 *
 * K bounds the largest omega^2 of the body on its feet (trace of the stiffness against the mass matrix), C its damping
 * rate, with k the stiffest state of each foot and c = 2 zeta sqrt(k m / n) of the unspent one.
 */
function chooseStep(kernel: TouchdownKernel, wanted: number, damping: number): number {
  const { feet, feetEnd, mass, moments } = kernel;
  const leastMoment = Math.min(...moments);
  const carried = mass / (feetEnd / FOOT_SIZE);
  let stiff = 0;
  let damped = 0;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    const [x, y, z] = [feet[o + FOOT_X]!, feet[o + FOOT_X + 1]!, feet[o + FOOT_X + 2]!];
    const share = 1 / mass + (x * x + y * y + z * z) / leastMoment;
    const softest = Math.max(feet[o + FOOT_KN]!, feet[o + FOOT_KT]!);
    const bottomed =
      1 / (1 / feet[o + FOOT_KN]! + 1 / feet[o + FOOT_BOTTOMED_STIFFNESS]! - 1 / feet[o + FOOT_LEG_STIFFNESS]!);
    stiff += Math.max(softest, bottomed) * share;
    damped += 2 * damping * Math.sqrt(softest * carried) * share;
  }
  const longest = (2 * MAX_PHASE_SQUARED) / (damped + Math.sqrt(damped * damped + 4 * stiff * MAX_PHASE_SQUARED));
  return Math.min(wanted, longest);
}

/**
 * c = 2 zeta sqrt(k m / n), kept as c / step since the rate is a difference over the step. Hull points are as stiff as the stiffest foot, and no
 * stiffer or more damped than this step bears: (k h^2 + c h) x mobility <= HULL_PHASE_SQUARED, see chooseStep.
 */
function setDamping(kernel: TouchdownKernel, share: number, step: number): void {
  const { feet, feetEnd, mass, run } = kernel;
  const carried = mass / (feetEnd / FOOT_SIZE);
  let stiffest = 0;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    feet[o + FOOT_CN] = (2 * share * Math.sqrt(feet[o + FOOT_KN]! * carried)) / step;
    feet[o + FOOT_CT] = (2 * share * Math.sqrt(feet[o + FOOT_KT]! * carried)) / step;
    stiffest = Math.max(stiffest, feet[o + FOOT_KN]!);
  }
  const most = HULL_PHASE_SQUARED / (hullMobility(kernel) * step * step);
  const damping = (2 * (share > 0 ? HULL_DAMPING : 0) * Math.sqrt(stiffest * carried)) / step;
  const stiffness = Math.min(stiffest, most / 2);
  run[RUN_HULL_K] = stiffness;
  run[RUN_HULL_C] = Math.min(damping, most - stiffness);
}

/**
 * How far, at most, impulses of one unit at the hull points that carry the body at once move these points [1/kg]: for HULL_SUPPORTS of them at the
 * farthest arm, or for half of them all, whichever is more.
 *
 *   4 (1/m + r^2 / I_least),   (n/m + max over axes of sum (r^2 - r_i^2) / I_i) / 2        trace of J M^-1 J^T, and its largest diagonal terms
 */
function hullMobility(kernel: TouchdownKernel): number {
  const { hull, mass, moments } = kernel;
  const turning = [0, 0, 0];
  let farthest = 0;
  for (let o = 0; o < hull.length; o += HULL_SIZE) {
    const square = hull[o]! * hull[o]! + hull[o + 1]! * hull[o + 1]! + hull[o + 2]! * hull[o + 2]!;
    farthest = Math.max(farthest, square);
    moments.forEach((moment, i) => {
      turning[i] = turning[i]! + (square - hull[o + i]! * hull[o + i]!) / moment;
    });
  }
  const half = (hull.length / HULL_SIZE / mass + Math.max(...turning)) / 2;
  return Math.max(HULL_SUPPORTS * (1 / mass + farthest / Math.min(...moments)), half);
}

function fillRun(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  options: TouchdownOptions,
  frame: GroundFrame,
  step: number,
): void {
  const { run, mass, moments, axes, center } = kernel;
  const gravity = toGround(frame, [0, 0, -conditions.gravity]);
  const axis: Vec3 = [axes[0][2], axes[1][2], axes[2][2]];
  const arm: Vec3 = [-dot3(axes[0], center), -dot3(axes[1], center), -dot3(axes[2], center)];
  run[RUN_STEP] = step;
  run[RUN_FRICTION] = conditions.ground.friction;
  run.set(gravity, RUN_GX);
  run[RUN_INVERSE_MASS] = 1 / mass;
  for (let i = 0; i < 3; i++) run[RUN_INVERSE_IX + i] = 1 / moments[i]!;
  run.set(axis, RUN_AXIS_X);
  run[RUN_THRUST_MOMENT] = arm[1] * axis[2] - arm[2] * axis[1];
  run[RUN_THRUST_MOMENT + 1] = arm[2] * axis[0] - arm[0] * axis[2];
  run[RUN_THRUST_MOMENT + 2] = arm[0] * axis[1] - arm[1] * axis[0];
  run[RUN_THRUST_DECAY] = 1;
  run[RUN_LEDGER_ON] = options.ledger === true ? 1 : 0;
}

/** Attitude, velocities, and a place such that the lowest point is `height` above the ground. */
function placeBody(kernel: TouchdownKernel, conditions: TouchdownConditions, frame: GroundFrame, travel: Vec3): void {
  const { body, axes, moments, feet, feetEnd, hull, touch, profile } = kernel;
  const { state } = conditions;
  const bodyToWorld = attitudeOf(state.yaw ?? 0, state.pitch ?? 0, state.roll ?? 0);
  const worldToGround = quaternionOf(
    [frame.x[0], frame.y[0], frame.z[0]],
    [frame.x[1], frame.y[1], frame.z[1]],
    [frame.x[2], frame.y[2], frame.z[2]],
  );
  const principalToBody = quaternionOf(axes[0], axes[1], axes[2]);
  const attitude: Quaternion = multiply(multiply(worldToGround, bodyToWorld), principalToBody);
  body.set(attitude, BODY_QW);
  const velocity = add3(scale3(travel, state.horizontalSpeed), [0, 0, -state.descentRate]);
  body.set(toGround(frame, velocity), BODY_VX);
  const rates = rotateBack(principalToBody, state.rates ?? [0, 0, 0]);
  body.set([rates[0] * moments[0], rates[1] * moments[1], rates[2] * moments[2]], BODY_LX);
  // lift the center of mass along the vertical until the lowest point has the wanted height
  const [x, y] = state.position ?? [0, 0];
  const level = toGround(frame, [x, y, 0]);
  const up = toGround(frame, [0, 0, 1]);
  let needed = -Infinity;
  const consider = (point: Vec3, surface: number): void => {
    const at = rotate(attitude, point);
    if (profile === undefined) {
      needed = Math.max(needed, (surface - level[2] - at[2]) / up[2]);
    } else {
      needed = Math.max(needed, liftAbove(kernel, level[0] + at[0], at[2], surface));
    }
  };
  for (let o = 0; o < feetEnd; o += FOOT_SIZE)
    consider([feet[o + FOOT_X]!, feet[o + FOOT_X + 1]!, feet[o + FOOT_X + 2]!], feet[o + FOOT_LEVEL]!);
  for (let o = 0; o < hull.length; o += HULL_SIZE) consider([hull[o]!, hull[o + 1]!, hull[o + 2]!], 0);
  const lift = needed + (state.height ?? 0) + HAIR * kernel.reach;
  body.set(add3(level, scale3(up, lift)), BODY_PX);
  touch.fill(0);
  for (let o = 0; o < hull.length; o += HULL_SIZE) hull.fill(0, o + 3, o + HULL_SIZE);
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) feet[o + FOOT_UN] = -1;
}

/** How far a point at height z above x must rise for its distance from the profile to be `surface` [m]. */
function liftAbove(kernel: TouchdownKernel, x: number, z: number, surface: number): number {
  const { profile, touch } = kernel;
  if (profile === undefined) return 0;
  const onGround = profileHeight(profile, x) - z;
  if (surface === 0) return onGround;
  let low = onGround - STEEPEST * Math.abs(surface);
  let high = onGround + STEEPEST * Math.abs(surface);
  for (let turn = 0; turn < BISECTIONS; turn++) {
    const middle = (low + high) / 2;
    touchProfile(profile, x, z + middle, touch);
    if (touch[TOUCH_HEIGHT]! < surface) low = middle;
    else high = middle;
  }
  return high;
}
