import type { Engine } from '../lander/lander.ts';
import { MAX_TILT_DEG } from '../input/controlInput.ts';
import { atan, cos } from '../math/trig.ts';
import type { ControlInput, DescentState } from '../world/descent.ts';
import { lever } from './thrust.ts';

/** What a pilot must know besides the state. */
export interface PilotedCraft {
  readonly engine: Engine;
  /** [m/s²] */
  readonly gravity: number;
}

/** Time in which a pilot means to take out an error of descent rate and of drift [s]. Common practice, no source. */
const RATE_TIME = 1;
const DRIFT_TIME = 3;

/**
 * Most lean a pilot uses to change a drift [deg]: high up, and near the ground, so that the lander stands upright when it gets there; the heights between
 * which it goes from the one to the other [m]. Common practice, no source.
 */
export const HIGH_TILT = 20;
export const LOW_TILT = 2;
export const TILT_TAPER: readonly [low: number, high: number] = [2, 15];

/** Upward push that brings it to a descent rate [m/s], weight included, and no less than none [m/s²]. `slowing`: how fast that rate itself goes down. */
export function upwardFor(gravity: number, state: DescentState, descentRate: number, slowing = 0): number {
  return Math.max(0, gravity + slowing + (-descentRate - state.vy) / RATE_TIME);
}

/** Lean that brings it to a drift [m/s] while it is pushed upward by `up` [m/s²], within what is used at this height: whole degrees, counter-clockwise. */
export function leanFor(state: DescentState, drift: number, up: number): number {
  const across = (drift - state.vx) / DRIFT_TIME;
  const most = Math.min(MAX_TILT_DEG, mostLean(state.height));
  // thrust points along the long axis: to push to the right the lander leans to the right, clockwise
  const lean = up > 0 ? (-atan(across / up) * 180) / Math.PI : 0;
  return Math.round(Math.max(-most, Math.min(most, lean))) + 0;
}

/** Lever position that pushes upward by `up` [m/s²], leaning as it does. */
export function leverFor({ engine }: PilotedCraft, state: DescentState, up: number): ControlInput['thrustPercent'] {
  return lever(engine, (state.mass * up) / cos(state.angle));
}

/** Has met the ground: whatever flies it lets the legs take the rest. */
export function isDown({ touchdown, phase }: DescentState): boolean {
  return touchdown !== undefined || phase === 'contact';
}

function mostLean(height: number): number {
  const [low, high] = TILT_TAPER;
  const share = Math.max(0, Math.min(1, (height - low) / (high - low)));
  return LOW_TILT + share * (HIGH_TILT - LOW_TILT);
}
