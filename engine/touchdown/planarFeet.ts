/**
 * The feet of a lander whose body moves in one vertical plane by somebody else's integrator: the same force elements, soil and
 * friction as in a simulated touchdown, every leg at its own place.
 *
 * Section frame: x right, y up, angles counter-clockwise; the outward normal of `azimuth` points to +x, the viewer looks along
 * the world's y.
 */
import { drainTanks } from '../lander/drainTanks.ts';
import type { Lander } from '../lander/lander.ts';
import { massProperties } from '../lander/massProperties.ts';
import { assert } from '../assert.ts';
import { cos, sin } from '../math/trig.ts';
import { direction3, subtract3, type Vec3 } from '../math/vec3.ts';
import { advance } from './advance.ts';
import { DEFAULT_DAMPING } from './constants.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  BODY_AX,
  BODY_SIZE,
  FOOT_BOTTOMED,
  FOOT_CN,
  FOOT_CT,
  FOOT_SIZE,
  FOOT_X,
  RUN_GX,
  RUN_INVERSE_IX,
  RUN_INVERSE_MASS,
  FOOT_KN,
  FOOT_KT,
  FOOT_LOAD,
  BODY_LX,
  BODY_MX,
  BODY_PX,
  BODY_QW,
  FOOT_STAGE,
  RUN_STEP,
  FOOT_STROKE,
  FOOT_STRUT,
  FOOT_TOUCHING,
  BODY_VX,
} from './layout.ts';
import { prepareTouchdown } from './prepareTouchdown.ts';
import { startTouchdown } from './startTouchdown.ts';
import type { LegCondition, TouchdownConditions } from './touchdownCase.ts';

/** Changed in place by `pressFeet` and `weighFeet`. */
export interface PlanarFeet {
  readonly kernel: TouchdownKernel;
  readonly count: number;
  /** Whole steps in the given interval, and their length [s]: as fine as the simulation needs at the least mass. */
  readonly steps: number;
  readonly step: number;
  /** Stroke that each leg has [m]. */
  readonly strokes: readonly number[];
  /** Places as built: across the section, from the center of mass, and out of it toward the viewer [m]. */
  readonly across: readonly number[];
  readonly aside: readonly number[];
  /** Farthest sole or hull point from the center of mass, as built [m]. */
  readonly reach: number;
  /** Of the center of mass above the footpad plane, as the feet are placed now [m]. */
  centerHeight: number;
  /** Force of the ground on all feet [N] and its moment about the center of mass [N·m], at the last place. */
  forceX: number;
  forceY: number;
  moment: number;
}

/** What the motion of the body says of it where the feet are to be pressed. */
interface PlanarPlace {
  readonly x: number;
  readonly y: number;
  readonly vx: number;
  readonly vy: number;
  readonly rate: number;
}

/** What feet are laid out for. */
interface PlanarFeetRequest {
  readonly lander: Lander;
  /** [kg] */
  readonly leastMass: number;
  readonly azimuth: number;
  readonly ground: TouchdownConditions['ground'];
  /** [m/s²] */
  readonly gravity: number;
  /** Legs that are softer than built. */
  readonly legs: readonly LegCondition[];
  /** They are stepped in whole parts of it [s]. */
  readonly interval: number;
}

export function preparePlanarFeet(request: PlanarFeetRequest): PlanarFeet {
  const { lander, leastMass, azimuth, ground, gravity, legs, interval } = request;
  assert(
    legs.every(({ kind }) => kind === 'soft'),
    'a leg that is missing or not latched lets the lander fall out of the plane of the section',
  );
  const state = { horizontalSpeed: 0, descentRate: 0 };
  const conditions = { gravity, ground, state, legs };
  const kernel = preparedKernel(lander);
  // the lightest body is the quickest on its springs
  const finest = Math.min(
    startTouchdown(kernel, conditions, {}).step,
    startTouchdown(preparedKernel(drainTanks(lander, leastMass)), conditions, {}).step,
  );
  const steps = Math.ceil(interval / finest);
  const step = interval / steps;
  startTouchdown(kernel, conditions, { step });
  const { center } = massProperties(lander);
  const across: number[] = [];
  const aside: number[] = [];
  const { feet, run, body } = kernel;
  lander.legs.forEach((leg, index) => {
    const o = index * FOOT_SIZE;
    const pad = inSection(subtract3(leg.footpad, center), azimuth);
    feet.set(pad, o + FOOT_X);
    feet.set(inSection(direction3(subtract3(leg.hip, leg.footpad)) ?? [0, 0, 1], azimuth), o + FOOT_STRUT);
    across.push(pad[0]);
    aside.push(-pad[1]);
  });
  // the body frame is the section, its inertia somebody else's: what comes back is force and moment, not acceleration
  run[RUN_STEP] = step;
  run.fill(0, RUN_GX, RUN_GX + 3);
  run[RUN_INVERSE_MASS] = 1;
  run.set([0, 1, 0], RUN_INVERSE_IX);
  body.fill(0, 0, BODY_SIZE);
  body[BODY_QW] = 1;
  return {
    kernel,
    count: lander.legs.length,
    steps,
    step,
    strokes: lander.legs.map(({ stages }) => stages.reduce((sum, { stroke }) => sum + stroke, 0)),
    across,
    aside,
    reach: kernel.reach,
    centerHeight: center[2],
    forceX: 0,
    forceY: 0,
    moment: 0,
  };
}

function preparedKernel(lander: Lander): TouchdownKernel {
  const prepared = prepareTouchdown(lander);
  assert(prepared.ok, `the legs of a lander can be simulated: ${prepared.ok ? '' : JSON.stringify(prepared.error)}`);
  return prepared.value;
}

function inSection([x, y, z]: Vec3, azimuth: number): Vec3 {
  const [c, s] = [cos(azimuth), sin(azimuth)];
  return [c * x + s * y, c * y - s * x, z];
}

/** Takes over another mass and height of the center of mass: dashpots are a share of critical, c = 2 zeta sqrt(k m / n). */
export function weighFeet(planar: PlanarFeet, mass: number, centerHeight: number): void {
  const { feet } = planar.kernel;
  const lower = planar.centerHeight - centerHeight;
  const carried = mass / planar.count;
  planar.centerHeight = centerHeight;
  for (let i = 0; i < planar.count; i++) {
    const o = i * FOOT_SIZE;
    feet[o + FOOT_X + 2] = feet[o + FOOT_X + 2]! + lower;
    // a used-up leg keeps the dashpot that it had
    if (feet[o + FOOT_BOTTOMED]! > 0) continue;
    feet[o + FOOT_CN] = (2 * DEFAULT_DAMPING * Math.sqrt(feet[o + FOOT_KN]! * carried)) / planar.step;
    feet[o + FOOT_CT] = (2 * DEFAULT_DAMPING * Math.sqrt(feet[o + FOOT_KT]! * carried)) / planar.step;
  }
}

/**
 * Presses the feet where the body is after a drift of one step, at the velocity of the middle of it, and finds what the ground
 * answers. `cosHalf` and `sinHalf` are those of half its angle.
 */
export function pressFeet(planar: PlanarFeet, place: PlanarPlace, cosHalf: number, sinHalf: number): void {
  const { body } = planar.kernel;
  body[BODY_PX] = place.x;
  body[BODY_PX + 2] = place.y;
  body[BODY_VX] = place.vx;
  body[BODY_VX + 2] = place.vy;
  // counter-clockwise in the section is about -y
  body[BODY_QW] = cosHalf;
  body[BODY_QW + 2] = -sinHalf;
  body[BODY_LX + 1] = -place.rate;
  advance(planar.kernel, 0);
  planar.forceX = body[BODY_AX]!;
  planar.forceY = body[BODY_AX + 2]!;
  planar.moment = -body[BODY_MX + 1]!;
}

/**
 * Impulses of contacts that began or ended within the last step, beyond what half of its force counts: across, up [N·s] and
 * about the center of mass [N·m·s], into `sum`. Taken once.
 */
export function takeEdgeImpulse({ kernel, step }: PlanarFeet, sum: Float64Array): void {
  const { impulse } = kernel;
  sum[0] = impulse[0]! * step;
  sum[1] = impulse[2]! * step;
  sum[2] = -impulse[4]! * step;
  impulse.fill(0);
}

/** Place of a sole in the section frame of the body, from the center of mass, moved by what its leg has crushed [m]. */
export function soleX({ kernel }: PlanarFeet, leg: number): number {
  return kernel.feet[leg * FOOT_SIZE + FOOT_X]!;
}

export function soleY({ kernel }: PlanarFeet, leg: number): number {
  return kernel.feet[leg * FOOT_SIZE + FOOT_X + 2]!;
}

/** Out of the section, toward the viewer [m]. */
export function soleZ({ kernel }: PlanarFeet, leg: number): number {
  return -kernel.feet[leg * FOOT_SIZE + FOOT_X + 1]!;
}

export function isFootDown({ kernel }: PlanarFeet, leg: number): boolean {
  return kernel.feet[leg * FOOT_SIZE + FOOT_TOUCHING]! > 0;
}

/** Permanent shortening of a leg [m]. */
export function strokeOf({ kernel }: PlanarFeet, leg: number): number {
  return kernel.feet[leg * FOOT_SIZE + FOOT_STROKE]!;
}

/** True once every stage of a leg is used up: it is stiff from then on. */
export function isUsedUp({ kernel }: PlanarFeet, leg: number): boolean {
  return kernel.feet[leg * FOOT_SIZE + FOOT_BOTTOMED]! > 0;
}

export function anyUsedUp(planar: PlanarFeet): boolean {
  for (let leg = 0; leg < planar.count; leg++) if (isUsedUp(planar, leg)) return true;
  return false;
}

/** Number of stages of a leg that are used up. */
export function feetStage({ kernel }: PlanarFeet, leg: number): number {
  return kernel.feet[leg * FOOT_SIZE + FOOT_STAGE]!;
}

/** Axial [N]. */
export function loadOf({ kernel }: PlanarFeet, leg: number): number {
  return kernel.feet[leg * FOOT_SIZE + FOOT_LOAD]!;
}

/** Every number that decides the next step of the feet. */
export function feetMemory({ kernel }: PlanarFeet): Float64Array {
  return kernel.feet;
}
