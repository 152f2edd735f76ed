import { describe, expect, it } from 'vitest';
import { createPointSet, SAMPLING_METHODS } from '../../../engine/dispersion/pointSet.ts';
import { SOBOL_DIMENSIONS } from '../../../engine/math/sobol.ts';

/** Largest error over five seeds of the mean of Σ u² in 6 dimensions, which is 2. */
function error(method: (typeof SAMPLING_METHODS)[number]): number {
  let worst = 0;
  for (let seed = 0; seed < 5; seed++) {
    const set = createPointSet({ method, dimensions: 6, size: 1024, seed });
    let sum = 0;
    for (let i = 0; i < 1024; i++) for (let j = 0; j < 6; j++) sum += set.coordinate(i, j) ** 2;
    worst = Math.max(worst, Math.abs(sum / 1024 - 2));
  }
  return worst;
}

describe('point sets', () => {
  it.each(SAMPLING_METHODS)('[DI2] of method %s lie strictly inside the cube and repeat point by point', (method) => {
    const options = { method, dimensions: 5, size: 1000, seed: 12 };
    const [a, b] = [createPointSet(options), createPointSet(options)];
    // backward the second time: a point does not depend on those asked for before
    const forward = Array.from({ length: 5000 }, (_, i) => a.coordinate(Math.floor(i / 5), i % 5));
    const backward = Array.from({ length: 5000 }, (_, i) => b.coordinate(999 - Math.floor(i / 5), 4 - (i % 5)));
    expect(backward.toReversed()).toEqual(forward);
    expect(forward.every((u) => u > 0 && u < 1)).toBe(true);
  });

  it.each(SAMPLING_METHODS)('[DI2] of method %s change with the seed', (method) => {
    const at = (seed: number): number => createPointSet({ method, dimensions: 2, size: 64, seed }).coordinate(5, 1);
    expect(new Set([at(0), at(1), at(2), at(3)]).size).toBe(4);
  });

  it('[DI3] of a Latin hypercube have one point in every slice of every dimension', () => {
    const size = 997;
    const set = createPointSet({ method: 'latin', dimensions: 4, size, seed: 5 });
    for (let j = 0; j < 4; j++) {
      const slices = new Set(Array.from({ length: size }, (_, i) => Math.floor(set.coordinate(i, j) * size)));
      expect(slices.size).toBe(size);
    }
  });

  it("[DI3] of shifted Sobol' points keep one point in every one of 2^k slices", () => {
    const set = createPointSet({ method: 'sobol', dimensions: SOBOL_DIMENSIONS, size: 256, seed: 77 });
    for (let j = 0; j < SOBOL_DIMENSIONS; j++) {
      const slices = new Set(Array.from({ length: 256 }, (_, i) => Math.floor(set.coordinate(i, j) * 256)));
      expect(slices.size).toBe(256);
    }
  });

  it('[DI3] integrate a smooth function better the evener they are', () => {
    const plain = error('plain');
    expect(plain).toBeGreaterThan(0.003);
    expect(error('latin')).toBeLessThan(plain / 20);
    expect(error('sobol')).toBeLessThan(plain / 20);
  });

  it('only plain points call themselves independent', () => {
    const kinds = SAMPLING_METHODS.map(
      (method) => createPointSet({ method, dimensions: 1, size: 2, seed: 1 }).independent,
    );
    expect(kinds).toEqual([false, false, true]);
  });

  it('refuse sizes and dimensions they do not have', () => {
    const plain = { method: 'plain', dimensions: 1, size: 1, seed: 1 } as const;
    expect(() => createPointSet({ ...plain, size: 0 })).toThrow(/1 to 2\^30 points/);
    expect(() => createPointSet({ ...plain, size: 2 ** 30 + 1 })).toThrow(/1 to 2\^30 points/);
    expect([1, 2 ** 30].map((size) => createPointSet({ ...plain, size }).size)).toEqual([1, 2 ** 30]);
    expect(() => createPointSet({ ...plain, dimensions: 1.5 })).toThrow(/dimensions/);
    expect(() => createPointSet({ ...plain, method: 'sobol', dimensions: SOBOL_DIMENSIONS + 1 })).toThrow(/at most 32/);
  });
});
