import { assert } from '../assert.ts';
import { findRoot, tan } from '../math/index.ts';
import { assertCondition, tripLimit, type PivotBody } from './tripLimit.ts';

/** A body whose feet are still to be placed. */
type StancelessBody = Omit<PivotBody, 'halfStance' | 'oppositeHalfStance'>;

interface StanceDemand {
  /** Speed along the ground that must not trip it [m/s]. */
  readonly speed: number;
  /** [m/s²] */
  readonly gravity: number;
  /** Fall of the ground in the direction of travel, + downhill [rad]. Default 0. */
  readonly slope?: number;
}

export type RequiredStance =
  | {
      readonly kind: 'stance';
      /** Foot point to tip edge [m]. */
      readonly halfStance: number;
      /** 'standing': on this slope merely standing asks for as much. Any wider stance will do. */
      readonly governedBy: 'trip' | 'standing';
    }
  /** It would take more than WIDEST times the center height. */
  | { readonly kind: 'none'; readonly widest: number };

/** Half stances are sought up to this many times the height of the center of mass [-]. Far beyond anything that is built. */
export const WIDEST = 1024;
/** The search starts this far above the stance that stands, in heights of the center of mass [-]. A stance below it is no stance. */
const NARROWEST = 1 / 1024 / 1024 / 1024;

/**
 * Half stance at which the trip limit just reaches a speed, by the plastic pivot and by the lossless bound. The body's
 * inertia is held while the feet move.
 *
 * Root of tripLimit(b) − speed: the exact expression, which grows with b without end, since
 * d/db (L − h cos φ − b sin φ) = sin α − sin φ > 0 wherever the body stands.
 */
export function requiredStance(
  body: StancelessBody,
  demand: StanceDemand,
): { readonly plastic: RequiredStance; readonly lossless: RequiredStance } {
  const { speed, gravity, slope = 0 } = demand;
  assert(speed > 0 && speed < Infinity, 'speed is above 0');
  assertCondition({ gravity, slope });
  return {
    plastic: searchStance(body, demand, (stance) => limitOf(body, demand, stance).plastic),
    lossless: searchStance(body, demand, (stance) => limitOf(body, demand, stance).lossless),
  };
}

function limitOf(
  body: StancelessBody,
  { gravity, slope = 0 }: StanceDemand,
  halfStance: number,
): { readonly plastic: number; readonly lossless: number } {
  const limit = tripLimit({ ...body, halfStance }, { gravity, slope });
  // a stance that rounds to the one that just stands
  if (limit.kind === 'cannotStand') return { plastic: 0, lossless: 0 };
  return { plastic: limit.plastic.alongGround, lossless: limit.lossless?.alongGround ?? 0 };
}

function searchStance(
  body: StancelessBody,
  { speed, slope = 0 }: StanceDemand,
  limitAt: (halfStance: number) => number,
): RequiredStance {
  const height = body.centerHeight;
  const standing = height * tan(Math.abs(slope));
  const widest = WIDEST * height;

  let low = standing;
  let step = NARROWEST * height;
  while (limitAt(standing + step) < speed) {
    low = standing + step;
    step *= 2;
    if (standing + step > widest) return { kind: 'none', widest };
  }
  if (low === standing) return { kind: 'stance', halfStance: standing + step, governedBy: 'standing' };
  const search = findRoot((halfStance) => limitAt(halfStance) - speed, { low, high: standing + step });
  assert(search.kind === 'root', 'the trip limit grows with the stance');
  return { kind: 'stance', halfStance: search.x, governedBy: 'trip' };
}
