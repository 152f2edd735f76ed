import { describe, expect, it } from 'vitest';
import { bekkerCoefficient, bekkerForce, furtherSinkage } from '../../../engine/touchdown/soil.ts';

describe('soil', () => {
  it('has the coefficient (k_c / radius + k_phi) x area of a round pad', () => {
    const diameter = 2 * Math.sqrt(0.6875 / Math.PI);
    const expected = (1400 / (diameter / 2) + 820_000) * 0.6875;
    expect(bekkerCoefficient(1400, 820_000, diameter)).toBeCloseTo(expected, 6);
  });

  it('sinks until the trial force, less stiffness x sinkage, is on the curve', () => {
    for (const exponent of [0.5, 1, 1.2, 2]) {
      for (const before of [0, 0.004, 0.02]) {
        const force = 30_000 + bekkerForce(5e5, exponent, before);
        const dp = furtherSinkage(force, 1e6, 5e5, exponent, before);
        expect(dp).toBeGreaterThan(0);
        const miss = force - 1e6 * dp - bekkerForce(5e5, exponent, before + dp);
        expect(Math.abs(miss) / force).toBeLessThan(1e-9);
      }
    }
  });

  it('does so however steep the curve and however large the overload', () => {
    for (const exponent of [0.2, 0.35, 0.7, 1.5, 3]) {
      for (const before of [1e-4, 0.03, 0.5]) {
        for (const overload of [1.0001, 1.3, 10, 1e4]) {
          const force = overload * bekkerForce(5e5, exponent, before);
          const dp = furtherSinkage(force, 1e6, 5e5, exponent, before);
          const miss = force - 1e6 * dp - bekkerForce(5e5, exponent, before + dp);
          expect(Math.abs(miss) / force, `${exponent}, ${before}, ${overload}`).toBeLessThan(1e-9);
        }
      }
    }
  });

  it('sinks by the excess over the stiffness where the strength is constant', () => {
    expect(furtherSinkage(12_000, 1e6, 10_000, 0, 0.3)).toBe(0.002);
  });
});
