import { describe, expect, it } from 'vitest';
import { findRoot } from '../../../engine/math/roots.ts';

/** Evaluations to come within a tolerance of the root. */
function evaluations(f: (x: number) => number, low: number, high: number, tolerance: number): number {
  const search = findRoot(f, { low, high, tolerance });
  if (search.kind !== 'root') throw new Error(`no root: ${search.kind}`);
  return search.evaluations;
}

describe('the root finder at a simple root', () => {
  // superlinear: each further squaring of the accuracy costs a bounded number of evaluations, while bisection's doubles
  const tolerances = [1e-2, 1e-4, 1e-8, 1e-15];
  it.each([
    ['x³ − x − 2', (x: number) => x * x * x - x - 2, 1, 2],
    ['1/3 − x⁵', (x: number) => 1 / 3 - x * x * x * x * x, 0.5, 1.5],
    ['x/(1 + x) − 2/7', (x: number) => x / (1 + x) - 2 / 7, 0, 1],
  ])('[MA4] doubles its correct digits at bounded cost: %s', (_name, f, low, high) => {
    const counts = tolerances.map((tolerance) => evaluations(f, low, high, tolerance));
    const [first = 0, second = 0, third = 0, fourth = 0] = counts;
    // largest seen: 3 a doubling; bisection takes 7, 13 and 23
    expect(second - first).toBeLessThanOrEqual(3);
    expect(third - second).toBeLessThanOrEqual(3);
    expect(fourth - third).toBeLessThanOrEqual(3);
    expect(fourth).toBeGreaterThan(first);
  });
});
