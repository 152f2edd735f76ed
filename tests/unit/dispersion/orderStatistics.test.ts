import { describe, expect, it } from 'vitest';
import {
  quantileRank,
  toleranceConfidence,
  toleranceRank,
  toleranceRuns,
} from '../../../engine/dispersion/orderStatistics.ts';
import { seedRandom, nextUniform } from '../../../engine/math/random.ts';

describe('order statistics', () => {
  it('[DI6] give the extreme of n values the confidence 1 - coverage^n', () => {
    for (const n of [1, 10, 59, 500]) expect(toleranceConfidence(n, 1, 0.95)).toBeCloseTo(1 - 0.95 ** n, 12);
  });

  it('[DI6] keep their promise when tried: the ranked value covers as often as stated', () => {
    const trials = 4000;
    const [runs, rank, coverage] = [100, 3, 0.95];
    const random = seedRandom(2);
    let covered = 0;
    for (let t = 0; t < trials; t++) {
      const values = Array.from({ length: runs }, () => nextUniform(random)).toSorted((a, b) => a - b);
      if ((values[runs - rank] ?? 0) >= coverage) covered++;
    }
    // binomial deviation of the share is below 0.008; four of them
    expect(Math.abs(covered / trials - toleranceConfidence(runs, rank, coverage))).toBeLessThan(0.032);
  });

  it('[DI6] take the farthest rank that still holds, and none for want of runs', () => {
    const wanted = { coverage: 0.99, confidence: 0.95 };
    expect(toleranceRank(298, wanted)).toBeUndefined();
    expect(toleranceRank(299, wanted)).toBe(1);
    for (const runs of [299, 1000, 50_000]) {
      const rank = toleranceRank(runs, wanted) ?? Number.NaN;
      expect(toleranceConfidence(runs, rank, 0.99)).toBeGreaterThanOrEqual(0.95);
      expect(toleranceConfidence(runs, rank + 1, 0.99)).toBeLessThan(0.95);
    }
  });

  it('[DI6] need runs such that one fewer would not do', () => {
    for (const rank of [1, 4, 20]) {
      const runs = toleranceRuns(rank, { coverage: 0.9, confidence: 0.9 });
      expect(toleranceConfidence(runs, rank, 0.9)).toBeGreaterThanOrEqual(0.9);
      expect(runs === rank ? 0 : toleranceConfidence(runs - 1, rank, 0.9)).toBeLessThan(0.9);
    }
  });

  it.each([
    [1, 1, 0.5],
    [2, 1, 0.5],
    [2, 2, 0.5],
    [59, 1, 0.95],
    [400, 5, 0.99],
  ])('[DI6] hold for a confidence that is just theirs: %i runs, rank %i, coverage %f', (runs, rank, coverage) => {
    expect(toleranceRank(runs, { coverage, confidence: toleranceConfidence(runs, rank, coverage) })).toBe(rank);
  });

  it('quantiles are values that were seen', () => {
    expect([0.01, 0.1, 0.11, 0.5, 0.95, 0.999].map((p) => quantileRank(10, p))).toEqual([1, 1, 2, 5, 10, 10]);
    expect(quantileRank(1, 0.01)).toBe(1);
    expect(() => quantileRank(0, 0.5)).toThrow(/at least one value/);
  });
});
