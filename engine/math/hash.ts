/**
 * 64-bit FNV-1a hash of bytes and of doubles, for telling two states apart: not for secrets.
 *
 *   for each byte:  h = (h XOR byte) × prime  mod 2^64        [Fowler2012] "FNV-1a"
 *
 * prime = 2^40 + 435, start 14695981039346656037. Held as two 32-bit words, with a sign as the platform's whole numbers have one: a table hashes thousands of
 * bytes at each mark, and numbers beyond 31 bits would be put away one by one.
 */
import { assert } from '../assert.ts';

/** Plain data; the functions named mix… change it in place. Whole numbers from −2^31 to 2^31 − 1, whose bits are the words. */
export interface HashState {
  high: number;
  low: number;
}

const PRIME_LOW = 435;
/** Scratch for the bytes of one double, overwritten before each use. */
const WORD = new DataView(new ArrayBuffer(8));

/** The hash of nothing. */
export function createHash(): HashState {
  return { high: 0xcbf29ce4 | 0, low: 0x84222325 | 0 };
}

export function mixByte(state: HashState, byte: number): void {
  mixWord(state, byte, 1);
}

/** Mixes in so many bytes of a whole number of up to 32 bits, least significant first. */
export function mixWord(state: HashState, word: number, bytes: number): void {
  let { high, low } = state;
  for (let i = 0; i < bytes; i++) {
    low ^= (word >>> (8 * i)) & 0xff;
    // low × 435 in two halves: each product is below 2^25
    const lower = (low & 0xffff) * PRIME_LOW;
    const upper = (low >>> 16) * PRIME_LOW + (lower >>> 16);
    high = (Math.imul(high, PRIME_LOW) + (upper >>> 16) + (low << 8)) | 0;
    low = (upper << 16) | (lower & 0xffff);
  }
  state.high = high;
  state.low = low;
}

/** Mixes in the eight bytes of a double, least significant first. 0 and −0 count as different; NaN is refused. */
export function mixFloat64(state: HashState, value: number): void {
  assert(!Number.isNaN(value), 'a hash needs numbers, got NaN');
  WORD.setFloat64(0, value, true);
  mixWord(state, WORD.getInt32(0, true), 4);
  mixWord(state, WORD.getInt32(4, true), 4);
}

/** Sixteen hexadecimal digits, most significant first. */
export function formatHash(state: HashState): string {
  return hexadecimal(state.high) + hexadecimal(state.low);
}

function hexadecimal(word: number): string {
  return (word >>> 0).toString(16).padStart(8, '0');
}

/** Hash of doubles in order, as sixteen hexadecimal digits. */
export function hashFloats(values: Iterable<number>): string {
  const state = createHash();
  for (const value of values) mixFloat64(state, value);
  return formatHash(state);
}
