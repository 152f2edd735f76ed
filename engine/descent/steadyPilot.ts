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

/** Where the pilot is to come down, instead of wherever its drift ends. */
export interface PilotAim {
  /** Of the center of mass in the section [m]. */
  readonly x: number;
  /** To meet it with, positive to the right [m/s]. */
  readonly drift: number;
}

/** It makes for an aim at this share of the distance each second [1/s], and no faster than this [m/s]; from the height at which it leaves off [m]. */
const RATE_PER_DISTANCE = 0.12;
const FASTEST_DRIFT = 3;
const AIM_UNTIL = 4;

/** What the pilot commands in this state. With an aim it makes for it until shortly before the ground. */
export function pilot(manner: PilotManner, craft: PilotedCraft, state: DescentState, aim?: PilotAim): ControlInput {
  if (isDown(state) || state.height < manner.cutHeight) return { thrustPercent: 0, tiltDeg: 0 };
  const asked = askedRate(manner, state.height);
  // slowing down along the asked profile takes this much: d(rate)/dt = rate · d(rate)/dh
  const slowing = asked < manner.fastestRate ? manner.ratePerHeight * asked : 0;
  const up = upwardFor(craft.gravity, state, asked, slowing);
  return { thrustPercent: leverFor(craft, state, up), tiltDeg: leanFor(state, driftFor(manner, state, aim), up) };
}

/** Horizontal velocity that is aimed at, positive to the right [m/s]. */
export function driftFor(manner: PilotManner, state: DescentState, aim: PilotAim | undefined): number {
  if (aim === undefined) return manner.drift;
  if (state.height < AIM_UNTIL) return aim.drift;
  return Math.max(-FASTEST_DRIFT, Math.min(FASTEST_DRIFT, aim.drift + RATE_PER_DISTANCE * (aim.x - state.x)));
}

/** Descent rate that is aimed at from a height [m/s]. */
export function askedRate({ touchdownRate, ratePerHeight, fastestRate }: PilotManner, height: number): number {
  return Math.min(fastestRate, touchdownRate + ratePerHeight * height);
}
