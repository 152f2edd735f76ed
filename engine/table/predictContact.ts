import { atan } from '../math/trig.ts';
import type { DescentSetup, DescentState } from '../world/descent.ts';
import { groundHeight, groundRise, groundSpan } from '../ground/terrain.ts';
import type { Span } from './limitTable.ts';

/** A lander that comes down slower than this is taken as not descending [m/s]. */
const LEAST_DESCENT = 0.1;

/** Time between two looks along the way down [s]. */
const LOOK = 0.25;

/**
 * Share of the way still to go across the ground by which the contact may lie elsewhere [-], and the least that it may [half stances]. Ours: the
 * crew goes on steering.
 */
const ASTRAY_SHARE = 0.1;
const ASTRAY_LEAST = 0.5;

/** Where and how a lander meets the ground if it goes on as it moves now. */
export interface PredictedContact {
  /** Of the center of mass [m]. */
  readonly x: number;
  /** From now [s]. */
  readonly seconds: number;
  /** [m/s] */
  readonly descentRate: number;
  /** Of the plane under the feet there, positive where it rises to the right [rad]. */
  readonly slope: number;
  /** Of that plane anywhere that the contact may lie. */
  readonly slopes: Span;
}

/**
 * Follows the lander straight on at the velocity it has, in a final drop under gravity, at the attitude it has, until a foot meets the ground. Thrust is
 * taken to hold the velocity: it changes with every touch of the crew, and the reading would jump with it.
 */
export function predictContact(
  setup: DescentSetup,
  halfStance: number,
  state: DescentState,
): PredictedContact | 'not descending' | 'off site' {
  const fall = state.phase === 'final drop' ? setup.gravity : 0;
  if (-state.vy < LEAST_DESCENT && fall === 0) return 'not descending';
  const [first, last] = groundSpan(setup.terrain);
  const isOff = (seconds: number) => {
    const x = state.x + state.vx * seconds;
    return x < first || x > last;
  };
  const height = (seconds: number) => clearance(setup, state, fall, seconds);
  let before = 0;
  let after = LOOK;
  while (height(after) > 0) {
    if (isOff(after)) return 'off site';
    before = after;
    after += LOOK;
  }
  const [high, low] = [height(before), height(after)];
  const seconds = high > 0 ? before + ((after - before) * high) / (high - low) : before;
  if (isOff(seconds)) return 'off site';
  const x = state.x + state.vx * seconds;
  const astray = Math.max(ASTRAY_LEAST * halfStance, ASTRAY_SHARE * Math.abs(state.vx) * seconds);
  return {
    x,
    seconds,
    descentRate: fall * seconds - state.vy,
    slope: slopeAt(setup, halfStance, x),
    slopes: slopesAbout(setup, halfStance, x, astray),
  };
}

/** Least height of a foot above the ground below it, after so long [m]. */
function clearance({ terrain }: DescentSetup, { legs, vx, vy }: DescentState, fall: number, seconds: number): number {
  let least = Infinity;
  for (const { footX, footY } of legs) {
    const y = footY + vy * seconds - (fall * seconds * seconds) / 2;
    least = Math.min(least, y - groundHeight(terrain, footX + vx * seconds));
  }
  return least;
}

/** The slope under the feet of a lander that stands upright at x, as the world reads it at a contact. */
function slopeAt({ terrain }: DescentSetup, halfStance: number, x: number): number {
  return atan(groundRise(terrain, x - halfStance, x + halfStance));
}

function slopesAbout(setup: DescentSetup, halfStance: number, x: number, astray: number): Span {
  const looks = Math.ceil((2 * astray) / setup.terrain.spacing) + 1;
  let [least, most] = [Infinity, -Infinity];
  for (let i = 0; i <= looks; i++) {
    const slope = slopeAt(setup, halfStance, x - astray + (2 * astray * i) / looks);
    least = Math.min(least, slope);
    most = Math.max(most, slope);
  }
  return [least, most];
}
