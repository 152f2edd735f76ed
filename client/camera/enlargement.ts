/**
 * Drawn to scale from high up, a lander would be a dot on its way to the ground. The section stays to scale all the way down; the lander is drawn
 * larger than that, by as much as keeps it readable, and the nearer the ground the less. Up to FULL meters all is to one scale. A lander drawn
 * larger has its feet where they are.
 *
 *   shown = h                                   h ≤ FULL
 *   shown = FULL + S ln(1 + (h − FULL) / S)     h > FULL            ours: slope 1 at FULL, S / (S + h − FULL) above
 *   enlargement = h / shown                                         1 up to FULL, without a step or a kink there
 *
 * With it the lander is as large as though it were only so high as shown, whatever the sheet.
 */
const FULL = 7;

/** How fast the shown height falls behind above FULL [m]. */
const S = 3;

/** How many times as large as the section a lander is drawn whose feet are so high [m] over the ground. */
export function enlargementAt(height: number): number {
  return height <= FULL ? 1 : height / (FULL + S * Math.log(1 + (height - FULL) / S));
}
