import { describe, expect, it } from 'vitest';
import {
  clopperPearson,
  lowerBound,
  upperBound,
  wilson,
  zeroFailureRuns,
} from '../../../engine/dispersion/intervals.ts';

/** Exact binomial probability of at most k successes, by summing; n small. */
function atMost(k: number, n: number, p: number): number {
  let term = (1 - p) ** n;
  let sum = term;
  for (let i = 1; i <= k; i++) {
    term *= (((n - i + 1) / i) * p) / (1 - p);
    sum += term;
  }
  return sum;
}

describe('intervals', () => {
  it('[DI4] hold the exact tail probability at the Clopper-Pearson bounds', () => {
    for (const [k, n] of [
      [1, 10],
      [7, 50],
      [25, 50],
      [49, 50],
    ] as const) {
      const { low, high } = clopperPearson({ successes: k, runs: n }, 0.9);
      expect(1 - atMost(k - 1, n, low)).toBeCloseTo(0.05, 12);
      expect(atMost(k, n, high)).toBeCloseTo(0.05, 12);
    }
  });

  it('[DI4] start at 0 without a success and end at 1 without a failure', () => {
    for (const method of [wilson, clopperPearson]) {
      expect(method({ successes: 0, runs: 20 }, 0.95).low).toBe(0);
      expect(method({ successes: 20, runs: 20 }, 0.95).high).toBe(1);
      expect(method({ successes: 0, runs: 20 }, 0.95).high).toBeLessThan(0.25);
      expect(method({ successes: 20, runs: 20 }, 0.95).low).toBeGreaterThan(0.75);
    }
  });

  it('[DI4] mirror when successes and failures change places', () => {
    for (const successes of [0, 3, 11, 30]) {
      const a = clopperPearson({ successes, runs: 30 }, 0.95);
      const b = clopperPearson({ successes: 30 - successes, runs: 30 }, 0.95);
      expect(a.low).toBeCloseTo(1 - b.high, 14);
      expect(a.high).toBeCloseTo(1 - b.low, 14);
    }
  });

  it('[DI4] contain the observed share', () => {
    for (const [successes, runs] of [
      [3, 40],
      [500, 1000],
      [99_990, 100_000],
    ] as const) {
      for (const { low, high } of [wilson({ successes, runs }, 0.95), clopperPearson({ successes, runs }, 0.95)]) {
        expect(low).toBeLessThan(successes / runs);
        expect(high).toBeGreaterThan(successes / runs);
      }
      expect(upperBound({ successes, runs }, 0.975)).toBe(clopperPearson({ successes, runs }, 0.95).high);
    }
  });

  it('[DI5] name the least number of runs without a failure: one fewer would not do', () => {
    for (const reliability of [0.5, 0.9, 0.95, 0.999])
      for (const confidence of [0.5, 0.9, 0.99]) {
        const n = zeroFailureRuns(reliability, confidence);
        expect(reliability ** n).toBeLessThanOrEqual(1 - confidence);
        expect(reliability ** (n - 1)).toBeGreaterThan(1 - confidence);
        expect(lowerBound({ successes: n, runs: n }, confidence)).toBeGreaterThanOrEqual(reliability * (1 - 1e-12));
      }
  });

  it('refuse counts and confidences that mean nothing', () => {
    for (const [successes, runs] of [
      [-1, 5],
      [6, 5],
      [0, 0],
      [1.5, 5],
      [Number.NaN, 5],
    ] as const)
      expect(() => wilson({ successes, runs }, 0.95)).toThrow(/run/);
    for (const confidence of [0, 1, -0.1, 95, Number.NaN])
      expect(() => clopperPearson({ successes: 1, runs: 5 }, confidence)).toThrow(/between 0 and 1/);
  });
});
