import { describe, expect, it } from 'vitest';
import { normalProbability, normalQuantile } from '../../../engine/math/normalDistribution.ts';

describe('the normal distribution', () => {
  it('has its quantile where its probability is, on both sides of the middle', () => {
    for (const p of [1e-12, 0.01, 0.3, 0.5, 0.9, 0.999])
      expect(normalProbability(normalQuantile(p)) / p).toBeCloseTo(1, 12);
  });

  it('has no quantile at 0, at 1, outside, or of no number', () => {
    for (const wrong of [0, 1, -0.1, 1.1, Number.NaN])
      expect(() => normalQuantile(wrong)).toThrow(/probability between 0 and 1/);
  });
});
