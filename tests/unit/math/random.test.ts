import { describe, expect, it } from 'vitest';
import { nextNormal, nextUint32, nextUniform, seedRandom } from '../../../engine/math/random.ts';

const TWO_64 = 1n << 64n;

/** The generator as published, in 64-bit whole-number arithmetic. [ONeill2014] sec. 6.3.1 and pcg_basic.c */
function publishedPcg32(seed: bigint, stream: bigint): () => number {
  const increment = ((stream << 1n) | 1n) % TWO_64;
  let state = 0n;
  const step = (): void => {
    state = (state * 6364136223846793005n + increment) % TWO_64;
  };
  step();
  state = (state + seed) % TWO_64;
  step();
  return () => {
    const old = state;
    step();
    const word = Number((((old >> 18n) ^ old) >> 27n) & 0xffffffffn);
    const turn = Number(old >> 59n);
    return ((word >>> turn) | (word << (-turn & 31))) >>> 0;
  };
}

describe('seeded random numbers', () => {
  it('[MA5] start as the published demonstration does: seed 42, stream 54', () => {
    const random = seedRandom(42, 54);
    const outputs = Array.from({ length: 6 }, () => nextUint32(random));
    // [ONeill2014] output of pcg32-demo, round 1 (from memory)
    expect(outputs).toEqual([0xa15c02b7, 0x7b47f409, 0xba1d3330, 0x83d2f293, 0xbfa4784b, 0xcbed606e]);
  });

  it.each([
    [0, 0],
    [1, 2 ** 31],
    [2 ** 32 - 1, 2 ** 32],
    [Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER],
    [2 ** 33 + 12345, 2 ** 40 + 7],
  ])('[MA5] follow the published recurrence for seed %d, stream %d', (seed, stream) => {
    const random = seedRandom(seed, stream);
    const published = publishedPcg32(BigInt(seed), BigInt(stream));
    const ours = Array.from({ length: 2000 }, () => nextUint32(random));
    expect(ours).toEqual(Array.from({ length: 2000 }, published));
  });

  it('[MA5] make a uniform number from the upper 27 and 26 bits of two words', () => {
    const random = seedRandom(42, 54);
    expect(nextUniform(random)).toBe(((0xa15c02b7 >>> 5) * 2 ** 26 + (0x7b47f409 >>> 6)) / 2 ** 53);
  });

  it('[MA5] go on from a copy of the state as from the state itself', () => {
    const random = seedRandom(5);
    for (let i = 0; i < 10; i++) nextUint32(random);
    const copy = structuredClone(random);
    const original = Array.from({ length: 20 }, () => nextNormal(random));
    expect(Array.from({ length: 20 }, () => nextNormal(copy))).toEqual(original);
    expect(new Set(original).size).toBe(20);
  });

  it('[MA5] spread uniforms evenly: Kolmogorov-Smirnov at the 0.1 % level', () => {
    const count = 20_000;
    const random = seedRandom(2024);
    const sorted = Array.from({ length: count }, () => nextUniform(random)).toSorted((a, b) => a - b);
    const distance = sorted.reduce((worst, u, i) => Math.max(worst, (i + 1) / count - u, u - i / count), 0);
    // limit 1.949/√n, any table of the Kolmogorov distribution (from memory)
    expect(distance).toBeLessThan(1.949 / Math.sqrt(count));
    expect(sorted[0]).toBeGreaterThanOrEqual(0);
    expect(sorted.at(-1)).toBeLessThan(1);
  });

  it('[MA5] spread normal deviates as the normal law says', () => {
    const count = 100_000;
    const random = seedRandom(2025);
    const z = Array.from({ length: count }, () => nextNormal(random));
    const moment = (power: number): number => z.reduce((sum, x) => sum + x ** power, 0) / count;
    // four standard errors: of the mean 1/√n, of the second moment √2/√n, of the fourth √96/√n
    const error = 4 / Math.sqrt(count);
    expect(Math.abs(moment(1))).toBeLessThan(error);
    expect(Math.abs(moment(2) - 1)).toBeLessThan(Math.SQRT2 * error);
    expect(Math.abs(moment(3))).toBeLessThan(Math.sqrt(15) * error);
    expect(Math.abs(moment(4) - 3)).toBeLessThan(Math.sqrt(96) * error);
    // share beyond two and beyond three standard deviations: 0.0455003, 0.0026998
    const beyond = (limit: number): number => z.filter((x) => Math.abs(x) > limit).length / count;
    expect(Math.abs(beyond(2) - 0.0455003)).toBeLessThan(Math.sqrt(0.0455) * error);
    expect(Math.abs(beyond(3) - 0.0026998)).toBeLessThan(Math.sqrt(0.0027) * error);
  });

  it('[MA5] are unrelated between streams of one seed', () => {
    const count = 20_000;
    const [a, b] = [seedRandom(9, 1), seedRandom(9, 2)];
    let sum = 0;
    for (let i = 0; i < count; i++) sum += (nextUniform(a) - 0.5) * (nextUniform(b) - 0.5) * 12;
    expect(Math.abs(sum / count)).toBeLessThan(4 / Math.sqrt(count));
  });

  it.each([-1, 0.5, NaN, 2 ** 53])('[MA5] refuse the seed %d', (seed) => {
    expect(() => seedRandom(seed)).toThrow(/a seed is a whole number from 0 to 2\^53 - 1, got/);
    expect(() => seedRandom(1, seed)).toThrow(/a stream is a whole number/);
  });
});
