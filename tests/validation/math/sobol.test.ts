import { describe, expect, it } from 'vitest';
import { SOBOL_DIMENSIONS, sobolCoordinate, sobolWord } from '../../../engine/math/sobol.ts';
import data from '../fixtures/sobol-joe-kuo/data.json' with { type: 'json' };

describe("Sobol' points", () => {
  it('0 to 3 in dimensions 1 to 6 are those of Joe and Kuo, criterion 6 (check table)', () => {
    const expected = [
      [0, 0, 0, 0, 0, 0],
      [0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
      [0.75, 0.25, 0.25, 0.25, 0.75, 0.75],
      [0.25, 0.75, 0.75, 0.75, 0.25, 0.25],
    ];
    const points = expected.map((row, i) => row.map((_, j) => sobolCoordinate(i, j)));
    expect(points).toEqual(expected);
  });

  it('equal those of SciPy to the bit in 32 dimensions, up to index 2047', () => {
    expect(SOBOL_DIMENSIONS).toBe(32);
    expect(data.indices.length).toBeGreaterThan(10);
    const words = data.indices.map((i) => Array.from({ length: 32 }, (_, j) => sobolWord(i, j)));
    expect(words).toEqual(data.words);
  });
});
