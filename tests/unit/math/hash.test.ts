import { describe, expect, it } from 'vitest';
import { createHash, formatHash, hashFloats, mixByte, mixFloat64 } from '../../../engine/math/hash.ts';

function hashBytes(bytes: Iterable<number>): string {
  const state = createHash();
  for (const byte of bytes) mixByte(state, byte);
  return formatHash(state);
}

/** The definition, in 64-bit whole-number arithmetic. */
function definition(bytes: Iterable<number>): string {
  let hash = 14695981039346656037n;
  for (const byte of bytes) hash = ((hash ^ BigInt(byte)) * 1099511628211n) % (1n << 64n);
  return hash.toString(16).padStart(16, '0');
}

describe('the hash', () => {
  // [Fowler2012] test strings with their 64-bit FNV-1a hashes (from memory)
  it.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['foobar', '85944171f73967e8'],
  ])('[MA6] of "%s" is the published one', (text, expected) => {
    expect(hashBytes(new TextEncoder().encode(text))).toBe(expected);
  });

  it('[MA6] follows the definition for every byte and for long runs', () => {
    for (let byte = 0; byte < 256; byte++) expect(hashBytes([byte])).toBe(definition([byte]));
    const long = Array.from({ length: 10_000 }, (_, i) => (i * i * 7 + 3) % 256);
    expect(hashBytes(long)).toBe(definition(long));
  });

  it('[MA6] of doubles is that of their eight bytes, least significant first', () => {
    const values = [0, -0, 1, -1.5, Math.PI, 5e-324, 1.7976931348623157e308, Infinity, -Infinity];
    const bytes = new Uint8Array(values.length * 8);
    for (const [i, value] of values.entries()) new DataView(bytes.buffer).setFloat64(8 * i, value, true);
    expect(hashFloats(values)).toBe(definition(bytes));
  });

  it('[MA6] tells apart what differs in the last bit, in order and in the sign of zero', () => {
    const hashes = [[1, 2], [2, 1], [1, 2 + 2 ** -51], [1, 2, 0], [1, 2, -0], [1], []].map(hashFloats);
    expect(new Set(hashes).size).toBe(hashes.length);
  });

  it('[MA6] refuses what is no number, which has many bit patterns', () => {
    expect(() => mixFloat64(createHash(), NaN)).toThrow(/a hash needs numbers, got NaN/);
  });
});
