import type { Engine } from '../lander/lander.ts';
import { MAX_TILT_DEG } from '../input/controlInput.ts';
import { atan, cos } from '../math/trig.ts';
import type { ControlInput, DescentState } from '../world/descent.ts';
import { lever } from './thrust.ts';

/**
 * A scripted pilot: slows the descent in proportion to the height left, takes the drift out early, holds the lander upright
 * near the ground and shuts the engine down just above it. It looks at the state alone and remembers nothing, so
 * it can take over at any moment, and the same state always gives the same command. Common practice, no source.
 */
export interface PilotManner {
  /** Descent rate aimed at on the ground [m/s]. */
  readonly touchdownRate: number;
  /** How much faster it descends for each meter of height [1/s]. */
  readonly ratePerHeight: number;
  /** [m/s] */
  readonly fastestRate: number;
  /** Horizontal velocity it brings down to the ground, positive to the right [m/s]. */
  readonly drift: number;
  /** Engine off below this height [m]. */
  readonly cutHeight: number;
}

/** Lands gently with no drift. */
export const STEADY: PilotManner = {
  touchdownRate: 0.7,
  ratePerHeight: 0.09,
  fastestRate: 5,
  drift: 0,
  cutHeight: 0.4,
};

/** In a hurry: comes down nearly twice as fast, with a sideways speed beyond the limit of any lander of ours on the Moon. */
export const HASTY: PilotManner = { touchdownRate: 1.2, ratePerHeight: 0.14, fastestRate: 8, drift: 4, cutHeight: 0.4 };

/** What the pilot must know besides the state. */
interface PilotedCraft {
  readonly engine: Engine;
  /** [m/s²] */
  readonly gravity: number;
}

/** Time in which it means to take out an error of descent rate and of drift [s]. */
const RATE_TIME = 1;
const DRIFT_TIME = 3;
/** Largest tilt it uses high up, and near the ground [deg]; the height at which the former begins to fall, and ends [m]. */
const HIGH_TILT = 20;
const LOW_TILT = 2;
const TILT_TAPER: readonly [low: number, high: number] = [2, 15];

/** What the pilot commands in this state. */
export function pilot(manner: PilotManner, craft: PilotedCraft, state: DescentState): ControlInput {
  const isDown = state.touchdown !== undefined || state.phase === 'contact';
  if (isDown || state.height < manner.cutHeight) return { thrustPercent: 0, tiltDeg: 0 };
  const asked = Math.min(manner.fastestRate, manner.touchdownRate + manner.ratePerHeight * state.height);
  // slowing down along the asked profile takes this much: d(rate)/dt = rate · d(rate)/dh
  const slowing = asked < manner.fastestRate ? manner.ratePerHeight * asked : 0;
  const up = Math.max(0, craft.gravity + slowing + (-asked - state.vy) / RATE_TIME);
  const across = (manner.drift - state.vx) / DRIFT_TIME;
  const most = Math.min(MAX_TILT_DEG, tiltLimit(state.height));
  // thrust points along the long axis: to push to the right the lander leans to the right, clockwise
  const lean = up > 0 ? (-atan(across / up) * 180) / Math.PI : 0;
  const tiltDeg = Math.round(Math.max(-most, Math.min(most, lean))) + 0;
  return { thrustPercent: lever(craft.engine, (state.mass * up) / cos(state.angle)), tiltDeg };
}

function tiltLimit(height: number): number {
  const [low, high] = TILT_TAPER;
  const share = Math.max(0, Math.min(1, (height - low) / (high - low)));
  return LOW_TILT + share * (HIGH_TILT - LOW_TILT);
}
