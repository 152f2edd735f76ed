import { describe, expect, it } from 'vitest';
import { incompleteBeta, incompleteBetaInverse } from '../../../engine/math/incompleteBeta.ts';

describe('the incomplete beta function', () => {
  it('is x where a and b are 1, and x squared where a is 2', () => {
    for (const x of [0, 0.1, 0.5, 0.9, 1]) {
      expect(incompleteBeta(x, 1, 1)).toBeCloseTo(x, 14);
      expect(incompleteBeta(x, 2, 1)).toBeCloseTo(x * x, 14);
      expect(incompleteBetaInverse(x * x, 2, 1)).toBeCloseTo(x, 13);
    }
  });

  it('names what it cannot take', () => {
    for (const [a, b] of [
      [0, 1],
      [1, 0],
      [-1, 2],
      [2, -1],
      [Infinity, 1],
      [1, Number.NaN],
    ] as const)
      expect(() => incompleteBeta(0.5, a, b)).toThrow(/positive finite a and b/);
    for (const wrong of [-1e-9, 1 + 1e-9, Number.NaN]) {
      expect(() => incompleteBeta(wrong, 2, 3)).toThrow(/x from 0 to 1/);
      expect(() => incompleteBetaInverse(wrong, 2, 3)).toThrow(/p from 0 to 1/);
    }
  });
});
