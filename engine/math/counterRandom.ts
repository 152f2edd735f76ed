/**
 * Random numbers that are addressed instead of drawn: the same seed, index and stream give the same number, whoever asks
 * and in whatever order. That is what lets one run of a campaign be repeated alone, and the campaign be shared out among
 * any number of workers.
 *
 * Method: the counter-based generator Philox4x32-10 [Salmon2011], ten rounds of 32-bit multiplication keyed by the seed.
 * Whole-number arithmetic throughout, so the bits are the same everywhere.
 */
import { assert } from '../assert.ts';

/** Four 32-bit words. */
export type Words = readonly [number, number, number, number];

/** Multipliers and key increments of [Salmon2011] table 2 and sec. 3.3 (the golden ratio and √3 − 1, times 2^32). */
const MULTIPLIER_0 = 0xd2511f53;
const MULTIPLIER_1 = 0xcd9e8d57;
const KEY_STEP_0 = 0x9e3779b9;
const KEY_STEP_1 = 0xbb67ae85;
const ROUNDS = 10;

const TWO_TO_32 = 4294967296;
/** Of these many equal cells of [0, 1) the middles are given, so that neither 0 nor 1 ever comes. */
const CELLS = 4503599627370496; // 2^52

/** The ten-round block of [Salmon2011]: counter and key are words of 32 bits. */
export function philox(counter: Words, key: readonly [number, number]): Words {
  let [c0, c1, c2, c3] = counter;
  let [k0, k1] = key;
  for (let round = 0; round < ROUNDS; round++) {
    const high0 = highProduct(MULTIPLIER_0, c0);
    const low0 = Math.imul(MULTIPLIER_0, c0);
    const high1 = highProduct(MULTIPLIER_1, c2);
    const low1 = Math.imul(MULTIPLIER_1, c2);
    c0 = high1 ^ c1 ^ k0;
    c1 = low1;
    c2 = high0 ^ c3 ^ k1;
    c3 = low0;
    k0 = (k0 + KEY_STEP_0) | 0;
    k1 = (k1 + KEY_STEP_1) | 0;
  }
  return [c0 >>> 0, c1 >>> 0, c2 >>> 0, c3 >>> 0];
}

/** The words of a seed, an index (whole numbers from 0 to 2^53 − 1) and a stream (0 to 2^32 − 1). */
export function counterWords(seed: number, index: number, stream: number): Words {
  assert(isWhole(seed), `a seed is a whole number from 0, got ${seed}`);
  assert(isWhole(index), `an index is a whole number from 0, got ${index}`);
  assert(isWhole(stream) && stream < TWO_TO_32, `a stream is a whole number below 2^32, got ${stream}`);
  return philox(
    [index % TWO_TO_32, Math.floor(index / TWO_TO_32), stream, 0],
    [seed % TWO_TO_32, Math.floor(seed / TWO_TO_32)],
  );
}

/** A uniform number strictly between 0 and 1, of 52 random bits [-]. */
export function counterUniform(seed: number, index: number, stream: number): number {
  const [high, low] = counterWords(seed, index, stream);
  return (high * 1048576 + (low >>> 12) + 0.5) / CELLS;
}

function isWhole(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 0;
}

/** Upper 32 bits of the product of two unsigned words, from products of 16 bits, which are exact. */
function highProduct(a: number, b: number): number {
  const aLow = a & 0xffff;
  const aHigh = a >>> 16;
  const bLow = b & 0xffff;
  const bHigh = b >>> 16;
  const middle = aHigh * bLow + ((aLow * bLow) >>> 16);
  const other = aLow * bHigh + (middle & 0xffff);
  return (aHigh * bHigh + Math.floor(middle / 65536) + Math.floor(other / 65536)) | 0;
}
