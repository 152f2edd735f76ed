/**
 * High above the ground a drawing to scale would show a lander as a dot. Drawings have an answer to that: the long part
 * with nothing on it is broken out. Up to FULL meters the height is drawn whole; above, more and more of it is left out,
 * without a step in position or speed. Both pieces, that with the lander and that with the ground, stay to scale.
 *
 *   shown = h                                   h ≤ FULL
 *   shown = FULL + S ln(1 + (h − FULL) / S)     h > FULL            ours: slope 1 at FULL, S / (S + h − FULL) above
 */
const FULL = 7;

/** How fast the height is left out above FULL [m]. */
const S = 3;

/** Height as drawn [m]. */
export function shownHeight(height: number): number {
  return height <= FULL ? height : FULL + S * Math.log(1 + (height - FULL) / S);
}
