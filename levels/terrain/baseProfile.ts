import { tan } from '../../engine/math/index.ts';
import type { BaseSlope } from '../sites/site.ts';
import type { Profile } from './profile.ts';

/** Straight slopes one after the other, at height 0 where x = 0. */
export function baseProfile(slopes: readonly BaseSlope[]): Profile {
  const pieces = slopes.map(({ untilX, slope }) => ({ untilX, rise: tan(slope) }));
  return (x) => climb(pieces, x) - climb(pieces, 0);
}

/** Height above the end of the first piece. */
function climb(pieces: readonly { readonly untilX: number; readonly rise: number }[], x: number): number {
  const [first, ...rest] = pieces;
  if (first === undefined) return 0;
  let height = first.rise * (Math.min(x, first.untilX) - first.untilX);
  let from = first.untilX;
  for (const { untilX, rise } of rest) {
    if (x <= from) break;
    height += rise * (Math.min(x, untilX) - from);
    from = untilX;
  }
  return height;
}
