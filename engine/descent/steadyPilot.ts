import type { ControlInput, DescentState } from '../world/descent.ts';
import { isDown, leanFor, leverFor, upwardFor, type PilotedCraft } from './steer.ts';

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

/** What the pilot commands in this state. */
export function pilot(manner: PilotManner, craft: PilotedCraft, state: DescentState): ControlInput {
  if (isDown(state) || state.height < manner.cutHeight) return { thrustPercent: 0, tiltDeg: 0 };
  const asked = askedRate(manner, state.height);
  // slowing down along the asked profile takes this much: d(rate)/dt = rate · d(rate)/dh
  const slowing = asked < manner.fastestRate ? manner.ratePerHeight * asked : 0;
  const up = upwardFor(craft.gravity, state, asked, slowing);
  return { thrustPercent: leverFor(craft, state, up), tiltDeg: leanFor(state, manner.drift, up) };
}

/** Descent rate that is aimed at from a height [m/s]. */
export function askedRate({ touchdownRate, ratePerHeight, fastestRate }: PilotManner, height: number): number {
  return Math.min(fastestRate, touchdownRate + ratePerHeight * height);
}
