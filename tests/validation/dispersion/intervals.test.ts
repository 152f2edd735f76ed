import { describe, expect, it } from 'vitest';
import { clopperPearson, wilson, zeroFailureRuns } from '../../../engine/dispersion/intervals.ts';
import { toleranceRuns } from '../../../engine/dispersion/orderStatistics.ts';

describe('intervals against published values', () => {
  it('Clopper-Pearson of 7 in 50 agrees with the SciPy documentation of binomtest', () => {
    const { low, high } = clopperPearson({ successes: 7, runs: 50 }, 0.95);
    // its last digits carry that program's root tolerance of 2e-12; mpmath gives 0.058191700340372085, 0.26739600249700844
    expect(Math.abs(low - 0.05819170033997342)).toBeLessThan(2e-12);
    expect(Math.abs(high - 0.26739600249700846)).toBeLessThan(2e-12);
    expect(Math.abs(low / 0.05819170034037208 - 1)).toBeLessThan(1e-14);
    expect(Math.abs(high / 0.2673960024970084 - 1)).toBeLessThan(1e-14);
  });

  it('Wilson of 7 in 50 agrees with the check table to all its digits', () => {
    const { low, high } = wilson({ successes: 7, runs: 50 }, 0.95);
    expect(low).toBeCloseTo(0.0695083343, 10);
    expect(high).toBeCloseTo(0.2618619371, 10);
  });

  it('runs without a failure for 95, 99 and 99.865 % at 95 % confidence are those of NASA/TP-2010-216447', () => {
    expect([0.95, 0.99, 0.99865].map((reliability) => zeroFailureRuns(reliability, 0.95))).toEqual([59, 299, 2218]);
  });

  it('runs for the first three extremes as one-sided 95/95 bounds are the Wilks numbers 59, 93, 124', () => {
    // [Wilks1941]; as tabulated by Nutt and Wallis, Reliability Engineering and System Safety 83, 2004 (from memory)
    expect([1, 2, 3].map((rank) => toleranceRuns(rank, { coverage: 0.95, confidence: 0.95 }))).toEqual([59, 93, 124]);
  });
});
