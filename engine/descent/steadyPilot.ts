import { MAX_TILT_DEG } from '../input/controlInput.ts';
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
  /** In place of all that: a rate from each height on, from high to low. */
  readonly profile?: DescentProfile;
  /** Horizontal velocity it brings down to the ground, positive to the right [m/s]. */
  readonly drift: number;
  /** Engine off below this height [m]. */
  readonly cutHeight: number;
  /** From this slope on it comes down square to the ground, so that all feet meet it together [rad]; absent: always upright. */
  readonly squareFrom?: number;
}

/** Lands gently with no drift. */
export const STEADY: PilotManner = {
  touchdownRate: 0.7,
  ratePerHeight: 0.09,
  fastestRate: 5,
  drift: 0,
  cutHeight: 0.4,
};

/** Descent rates by height, from high to low: from so many meters up on [m] so fast [m/s]. The last is from the ground on. */
export type DescentProfile = readonly { readonly above: number; readonly rate: number }[];

/**
 * As the stand-in flies: steady, and square to a slope of more than 4 deg. By instruments onto Ravel Bank (12 deg) that leaves Steeple standing in 37 of 48
 * seeds where upright it stood in 15; what it is worth elsewhere stands in levels/plans/README.md.
 */
export const SQUARE: PilotManner = { ...STEADY, squareFrom: Math.PI / 45 };

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
  const slowing = manner.profile === undefined && asked < manner.fastestRate ? manner.ratePerHeight * asked : 0;
  const up = upwardFor(craft.gravity, state, asked, slowing);
  const thrustPercent = leverFor(craft, state, up);
  return { thrustPercent, tiltDeg: squareLean(manner, state) ?? leanFor(state, driftFor(manner, state, aim), up) };
}

/** It leans with the ground from this height on [m]. */
const SQUARE_BELOW = 2;
/** Leaning downhill brings it to move downhill: from this height on it moves uphill so fast to make up for that [m], [m/s]. */
const UPHILL_BELOW = 10;
const UPHILL_DRIFT = 0.4;

/** Lean with the ground, whole degrees, for one who comes down square to a slope and is about to; undefined else. */
export function squareLean({ squareFrom }: PilotManner, { slope, height }: DescentState): number | undefined {
  if (squareFrom === undefined || Math.abs(slope) < squareFrom || height > SQUARE_BELOW) return undefined;
  return Math.max(-MAX_TILT_DEG, Math.min(MAX_TILT_DEG, Math.round((slope * 180) / Math.PI)));
}

/** Horizontal velocity that is aimed at, positive to the right [m/s]. */
export function driftFor(manner: PilotManner, state: DescentState, aim: PilotAim | undefined): number {
  const uphill = uphillDrift(manner, state);
  if (aim === undefined) return manner.drift + uphill;
  if (state.height < AIM_UNTIL) return aim.drift + uphill;
  return Math.max(-FASTEST_DRIFT, Math.min(FASTEST_DRIFT, aim.drift + RATE_PER_DISTANCE * (aim.x - state.x)));
}

function uphillDrift({ squareFrom }: PilotManner, { slope, height }: DescentState): number {
  if (squareFrom === undefined || Math.abs(slope) < squareFrom || height > UPHILL_BELOW) return 0;
  return slope > 0 ? UPHILL_DRIFT : -UPHILL_DRIFT;
}

/** Descent rate that is aimed at from a height [m/s]. */
export function askedRate(
  {
    touchdownRate,
    ratePerHeight,
    fastestRate,
    profile,
  }: Pick<PilotManner, 'touchdownRate' | 'ratePerHeight' | 'fastestRate' | 'profile'>,
  height: number,
): number {
  const step = profile?.find(({ above }) => height >= above);
  return step?.rate ?? Math.min(fastestRate, touchdownRate + ratePerHeight * height);
}
