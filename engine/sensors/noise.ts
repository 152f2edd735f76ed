/**
 * Noise that is addressed instead of drawn: the same seed, stream, tick and component give the same deviate, whoever reads what and in
 * whatever order. There is no state, so looking at one sensor cannot change another.
 *
 * Method: two 32-bit words from a chain of the finalizer of [Appleby2011] over the parts of the address, and the quantile of the normal
 * distribution at them. Philox (math/counterRandom.ts) has the better pedigree; it hands out a list for each number, and this runs in every tick.
 * Mean, variance and independence are tested.
 */
import { mix32 } from '../math/mix32.ts';
import { normalQuantile } from '../math/normalDistribution.ts';

const TWO_TO_32 = 4294967296;
const TWO_TO_52 = 4503599627370496;
/** An odd word with bits in no order: the golden ratio times 2^32. */
const STEP = 0x9e3779b9;

/** What a seed, a whole number from 0 to 2^53 − 1, puts into every address: made once, a whole number below 2^32. */
export function noiseKey(seed: number): number {
  const low = mix32((seed % TWO_TO_32) ^ STEP);
  return mix32((low + Math.floor(seed / TWO_TO_32)) ^ STEP);
}

/** Uniform strictly between 0 and 1, of 52 random bits [-]. Stream, tick and component are whole numbers from 0 to 2^32 − 1. */
export function addressedUniform(key: number, stream: number, tick: number, component: number): number {
  let word = mix32((key + stream) ^ STEP);
  word = mix32((word + tick) ^ STEP);
  word = mix32((word + component) ^ STEP);
  const other = mix32((word + STEP) ^ (word >>> 7));
  return (word * 1048576 + (other >>> 12) + 0.5) / TWO_TO_52;
}

/** Standard normal deviate: mean 0, standard deviation 1, within ±8.3 [-]. */
export function addressedDeviate(key: number, stream: number, tick: number, component: number): number {
  return normalQuantile(addressedUniform(key, stream, tick, component));
}
