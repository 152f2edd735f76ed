/** Canvas pixels for a pixel of the page, at most: beyond this finer lines are not seen, only slower. */
const MOST_PIXELS = 2;

/** Canvas pixels for a pixel of the page now; changes with the page's zoom and the screen it is on. */
export function pixelRatio(): number {
  return Math.min(MOST_PIXELS, window.devicePixelRatio || 1);
}
