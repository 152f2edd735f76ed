import { describe, expect, it } from 'vitest';
import { carlsonRf } from '../../../engine/math/elliptic.ts';
import { exactPi, nearestDouble } from '../../support/exactMath.ts';

describe('the elliptic integral of the first kind', () => {
  // [Carlson1995] table of check values (from memory), printed to 14 figures
  it.each([
    [1, 2, 0, 1.3110287771461],
    [2, 3, 4, 0.58408284167715],
  ])('[MA7] R_F(%d, %d, %d) has the published value', (x, y, z, expected) => {
    expect(Math.abs(carlsonRf(x, y, z) / expected - 1)).toBeLessThan(5e-14);
  });

  it('[MA7] is 1/√x for three equal numbers, and π/2 for R_F(0, 1, 1)', () => {
    for (const x of [1e-3, 1, 7, 1e6]) expect(Math.abs(carlsonRf(x, x, x) * Math.sqrt(x) - 1)).toBeLessThan(1e-15);
    expect(Math.abs(carlsonRf(0, 1, 1) / (nearestDouble(exactPi) / 2) - 1)).toBeLessThan(4 * Number.EPSILON);
  });

  it('[MA7] agrees with the arithmetic-geometric mean of Gauss: K(k) = π / (2 agm(1, k′))', () => {
    for (const k2 of [0.01, 0.25, 0.5, 0.9, 0.999999]) {
      let [a, b] = [1, Math.sqrt(1 - k2)];
      for (let i = 0; i < 8; i++) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
      expect(Math.abs((carlsonRf(0, 1 - k2, 1) * 2 * a) / Math.PI - 1)).toBeLessThan(4 * Number.EPSILON);
    }
  });

  it('[MA7] does not mind the order, and scales with the root of its arguments', () => {
    const value = carlsonRf(0.3, 2, 11);
    expect(Math.abs(carlsonRf(11, 0.3, 2) / value - 1)).toBeLessThan(2 * Number.EPSILON);
    expect(carlsonRf(0.3 * 16, 2 * 16, 11 * 16)).toBe(value / 4);
  });

  it.each([
    [0, 0, 1],
    [-1, 1, 1],
    [NaN, 1, 1],
  ])('[MA7] refuses (%d, %d, %d)', (x, y, z) => {
    expect(() => carlsonRf(x, y, z)).toThrow(/at most one of them 0/);
  });
});
