import { describe, expect, it } from 'vitest';
import { counterUniform, counterWords, philox, type Words } from '../../../engine/math/counterRandom.ts';

/** Known answers of Philox4x32-10 as the authors publish them (kat_vectors of [Salmon2011]); from memory. */
const KNOWN_ANSWERS: readonly [Words, readonly [number, number], Words][] = [
  [
    [0, 0, 0, 0],
    [0, 0],
    [0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8],
  ],
  [
    [0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff],
    [0xffffffff, 0xffffffff],
    [0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd],
  ],
  [
    [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344],
    [0xa4093822, 0x299f31d0],
    [0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1],
  ],
];

describe('counter-based random numbers', () => {
  it('give the known answers of Philox4x32-10', () => {
    for (const [counter, key, expected] of KNOWN_ANSWERS) expect(philox(counter, key)).toEqual(expected);
  });

  it('depend on the seed, the index and the stream, also beyond 32 bits', () => {
    const base = counterWords(1, 2, 3);
    for (const other of [counterWords(2, 2, 3), counterWords(1, 3, 3), counterWords(1, 2, 4)])
      expect(other).not.toEqual(base);
    expect(counterWords(1, 2 ** 32 + 2, 3)).not.toEqual(base);
    expect(counterWords(2 ** 32 + 1, 2, 3)).not.toEqual(base);
    expect(counterWords(1, 2, 3)).toEqual(base);
  });

  it('are spread evenly over 64 slices and lie strictly between 0 and 1', () => {
    const slices = Array.from({ length: 64 }, () => 0);
    const draws = 64_000;
    for (let i = 0; i < draws; i++) {
      const u = counterUniform(11, i, 0);
      expect(u > 0 && u < 1).toBe(true);
      const slice = Math.floor(u * 64);
      slices[slice] = (slices[slice] ?? 0) + 1;
    }
    // chi-square of 63 degrees of freedom: 103.4 is its 0.999 quantile (tables)
    const chiSquare = slices.reduce((sum, n) => sum + (n - draws / 64) ** 2 / (draws / 64), 0);
    expect(chiSquare).toBeLessThan(103.4);
    expect(chiSquare).toBeGreaterThan(20);
  });

  it('refuse what is no whole number from 0', () => {
    for (const [seed, index, stream] of [
      [-1, 0, 0],
      [0.5, 0, 0],
      [0, Number.NaN, 0],
      [0, 0, 2 ** 32],
    ] as const)
      expect(() => counterWords(seed, index, stream)).toThrow(/whole number/);
  });
});
