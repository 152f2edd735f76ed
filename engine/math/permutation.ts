/**
 * A shuffling of 0 … size − 1 of which any single place can be asked for without making the rest.
 *
 * Method: a Feistel network on the next square power of two, walked on from each value that falls outside the range
 * until one falls inside ([BlackRogaway2002] sec. 3, cycle-walking). Each round adds to one half the mixed other half;
 * whatever the mixing, that can be undone, so the result is a permutation. The mixing is the finalizer of a public-domain
 * hash [Appleby2011], keyed by random words; sixteen rounds, because small halves need them to lose their order.
 */
import { assert } from '../assert.ts';
import { counterWords } from './counterRandom.ts';
import { mix32 } from './mix32.ts';

interface Permutation {
  readonly size: number;
  /** Where the element at this place goes: both 0 to size − 1. */
  at(place: number): number;
}

/** Shorter halves than this mix badly [bits]; small ranges then walk longer, which costs little. */
const SHORTEST_HALF = 4;
const ROUNDS = 16;
const LARGEST_SIZE = 1073741824; // 2^30

export function createPermutation(size: number, seed: number, stream: number): Permutation {
  assert(
    Number.isInteger(size) && size >= 1 && size <= LARGEST_SIZE,
    `a permutation has 1 to 2^30 places, not ${size}`,
  );
  const halfBits = Math.max(SHORTEST_HALF, Math.ceil((32 - Math.clz32(size - 1)) / 2));
  const mask = (1 << halfBits) - 1;
  const keys = roundKeys(seed, stream);
  return {
    size,
    at(place) {
      assert(Number.isInteger(place) && place >= 0 && place < size, `no place ${place} among ${size}`);
      let value = place;
      do value = shuffleOnce(value, halfBits, mask, keys);
      while (value >= size);
      return value;
    },
  };
}

function shuffleOnce(value: number, halfBits: number, mask: number, keys: Uint32Array): number {
  let left = value >>> halfBits;
  let right = value & mask;
  for (const key of keys) {
    const next = left ^ (mix32(right ^ key) & mask);
    left = right;
    right = next;
  }
  return ((left << halfBits) | right) >>> 0;
}

function roundKeys(seed: number, stream: number): Uint32Array {
  const keys = new Uint32Array(ROUNDS);
  for (let i = 0; i < ROUNDS; i += 4) keys.set(counterWords(seed, i, stream), i);
  return keys;
}
