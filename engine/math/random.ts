/**
 * Seeded random numbers: PCG32 (XSH-RR), a 64-bit linear congruential generator whose output is permuted to 32 bits
 * [ONeill2014] sec. 6.3.1. Chosen because its state is small plain data, streams are independent, and its authors publish
 * outputs to check against. The 64-bit state is held as two 32-bit words; only whole-number arithmetic is used.
 *
 * The state is plain data that survives structuredClone. The functions named next… advance it in place: whoever owns the
 * state clones it where the old one must stay.
 */
import { assert } from '../assert.ts';
import { log } from './exponential.ts';
import { cos } from './trig.ts';

/** Whole numbers from 0 to 2^32 − 1. */
export interface RandomState {
  high: number;
  low: number;
  /** The increment: odd, and different for every stream. */
  readonly streamHigh: number;
  readonly streamLow: number;
}

const TWO_32 = 4294967296;
/** 6364136223846793005 in two words. [ONeill2014] */
const MULTIPLIER_HIGH = 0x5851f42d;
const MULTIPLIER_LOW = 0x4c957f2d;

/**
 * A generator from a seed and, optionally, a stream: generators of one seed and different streams give unrelated numbers.
 * Both are whole numbers from 0 to 2^53 − 1.
 */
export function seedRandom(seed: number, stream = 0): RandomState {
  assert(Number.isSafeInteger(seed) && seed >= 0, `a seed is a whole number from 0 to 2^53 - 1, got ${seed}`);
  assert(Number.isSafeInteger(stream) && stream >= 0, `a stream is a whole number from 0 to 2^53 - 1, got ${stream}`);
  const streamLow = ((stream << 1) | 1) >>> 0;
  const streamHigh = Math.floor(stream / 2147483648) >>> 0;
  const state: RandomState = { high: 0, low: 0, streamHigh, streamLow };
  advance(state);
  const low = state.low + (seed >>> 0);
  state.high = (state.high + Math.floor(seed / TWO_32) + (low >= TWO_32 ? 1 : 0)) >>> 0;
  state.low = low >>> 0;
  advance(state);
  return state;
}

/** The next whole number from 0 to 2^32 − 1, each equally likely. */
export function nextUint32(state: RandomState): number {
  const { high, low } = state;
  advance(state);
  // ((s >> 18) ^ s) >> 27, turned right by s >> 59
  const mixedHigh = (high >>> 18) ^ high;
  const mixedLow = ((low >>> 18) | (high << 14)) ^ low;
  const word = (mixedLow >>> 27) | (mixedHigh << 5);
  const turn = high >>> 27;
  return ((word >>> turn) | (word << (-turn & 31))) >>> 0;
}

/** The next number of [0, 1), a multiple of 2^-53, each equally likely. Takes two words. */
export function nextUniform(state: RandomState): number {
  const upper = nextUint32(state) >>> 5;
  const lower = nextUint32(state) >>> 6;
  return (upper * 67108864 + lower) / 9007199254740992;
}

/**
 * The next normal deviate, mean 0, standard deviation 1, within ±8.57 [-]. Always takes two uniforms, so that the place
 * in the stream does not depend on the values drawn.
 *
 *   z = √(−2 ln u1) cos(2π u2)                        [BoxMuller1958]
 *
 * u1  uniform in (0, 1]      u2  uniform in [0, 1)
 */
export function nextNormal(state: RandomState): number {
  const u1 = 1 - nextUniform(state);
  const u2 = nextUniform(state);
  return Math.sqrt(-2 * log(u1)) * cos(2 * Math.PI * u2);
}

/** state × multiplier + increment, modulo 2^64. */
function advance(state: RandomState): void {
  const { high, low } = state;
  // low × multiplier low to 64 bits, in 16-bit halves
  const a = low >>> 16;
  const b = low & 0xffff;
  const c = MULTIPLIER_LOW >>> 16;
  const d = MULTIPLIER_LOW & 0xffff;
  const middle = a * d + ((b * d) >>> 16);
  const middleLow = (middle % 65536) + b * c;
  const productHigh = a * c + Math.floor(middle / 65536) + Math.floor(middleLow / 65536);
  const sumLow = (Math.imul(low, MULTIPLIER_LOW) >>> 0) + state.streamLow;
  const carry = sumLow >= TWO_32 ? 1 : 0;
  const crossed = Math.imul(high, MULTIPLIER_LOW) + Math.imul(low, MULTIPLIER_HIGH);
  state.high = (productHigh + crossed + state.streamHigh + carry) >>> 0;
  state.low = sumLow >>> 0;
}
