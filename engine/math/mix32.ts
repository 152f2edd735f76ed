/**
 * The 32-bit finalizer of [Appleby2011], fmix32: every bit of the word sways every bit of the result. Whole-number arithmetic, one result
 * for each word. From 0 to 2^32 − 1.
 */
export function mix32(word: number): number {
  let h = word;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}
