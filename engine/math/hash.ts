/**
 * 64-bit FNV-1a hash of bytes and of doubles, for telling two states apart: not for secrets.
 *
 *   for each byte:  h = (h XOR byte) × prime  mod 2^64        [Fowler2012] "FNV-1a"
 *
 * prime = 2^40 + 435, start 14695981039346656037. Held as two 32-bit words, all products below 2^53 and so exact.
 */
import { assert } from '../assert.ts';

/** Plain data; the functions named mix… change it in place. Whole numbers from 0 to 2^32 − 1. */
export interface HashState {
  high: number;
  low: number;
}

const PRIME_LOW = 435;
const TWO_32 = 4294967296;
/** Scratch for the bytes of one double, overwritten before each use. */
const WORD = new DataView(new ArrayBuffer(8));

/** The hash of nothing. */
export function createHash(): HashState {
  return { high: 0xcbf29ce4, low: 0x84222325 };
}

export function mixByte(state: HashState, byte: number): void {
  const low = (state.low ^ byte) >>> 0;
  const product = low * PRIME_LOW;
  const carry = Math.floor(product / TWO_32);
  state.high = (state.high * PRIME_LOW + carry + (low << 8)) >>> 0;
  state.low = product >>> 0;
}

/** Mixes in the eight bytes of a double, least significant first. 0 and −0 count as different; NaN is refused. */
export function mixFloat64(state: HashState, value: number): void {
  assert(!Number.isNaN(value), 'a hash needs numbers, got NaN');
  WORD.setFloat64(0, value, true);
  for (let i = 0; i < 8; i++) mixByte(state, WORD.getUint8(i));
}

/** Sixteen hexadecimal digits, most significant first. */
export function formatHash(state: HashState): string {
  return state.high.toString(16).padStart(8, '0') + state.low.toString(16).padStart(8, '0');
}

/** Hash of doubles in order, as sixteen hexadecimal digits. */
export function hashFloats(values: Iterable<number>): string {
  const state = createHash();
  for (const value of values) mixFloat64(state, value);
  return formatHash(state);
}
