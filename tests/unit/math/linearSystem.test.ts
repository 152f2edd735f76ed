import { describe, expect, it } from 'vitest';
import { gaussLegendreRule, integrateSmooth } from '../../../engine/math/gaussLegendre.ts';
import { solveLinear } from '../../../engine/math/linearSystem.ts';
import { nextNormal, seedRandom } from '../../../engine/math/random.ts';

describe('linear systems', () => {
  it('are solved to rounding for random matrices', () => {
    const random = seedRandom(4);
    for (let size = 1; size <= 12; size++) {
      const matrix = Array.from({ length: size }, () => Array.from({ length: size }, () => nextNormal(random)));
      const wanted = Array.from({ length: size }, (_, i) => i - 3);
      const right = matrix.map((row) => row.reduce((sum, value, j) => sum + value * (wanted[j] ?? 0), 0));
      const x = solveLinear(matrix, right);
      for (const [i, value] of wanted.entries()) expect(x?.[i]).toBeCloseTo(value, 9);
    }
  });

  it('with a zero on the diagonal are solved by exchanging rows', () => {
    expect(
      solveLinear(
        [
          [0, 2],
          [3, 1],
        ],
        [4, 5],
      ),
    ).toEqual([1, 2]);
  });

  it('without one solution have none', () => {
    expect(
      solveLinear(
        [
          [1, 2],
          [2, 4],
        ],
        [1, 2],
      ),
    ).toBeUndefined();
    expect(solveLinear([[0]], [1])).toBeUndefined();
  });

  it('that are no square are refused', () => {
    expect(() => solveLinear([[1, 2]], [1])).toThrow(/as many rows/);
  });
});

describe('Gauss-Legendre quadrature', () => {
  it('has the published nodes and weights of the five-point rule', () => {
    // [Abramowitz1964] table 25.4
    const rule = gaussLegendreRule(5).toSorted((a, b) => a.node - b.node);
    expect(rule[4]?.node).toBeCloseTo(0.906179845938664, 14);
    expect(rule[4]?.weight).toBeCloseTo(0.236926885056189, 14);
    expect(rule[2]?.weight).toBeCloseTo(0.568888888888889, 14);
  });

  it('integrates polynomials of high degree exactly, and sin to rounding', () => {
    expect(integrateSmooth((x) => x ** 40, 0, 1)).toBeCloseTo(1 / 41, 15);
    expect(integrateSmooth(Math.sin, 0, Math.PI)).toBeCloseTo(2, 14);
  });
});
