import { describe, expect, it } from 'vitest';
import { createPointSet } from '../../../engine/dispersion/pointSet.ts';
import { designPoint, designRuns, rankCorrelation, varianceShares } from '../../../engine/dispersion/sensitivity.ts';

/** sin x1 + a sin² x2 + b x3⁴ sin x1 with x uniform in (−π, π): [IshigamiHomma1990]. */
const [A, B] = [7, 0.1];
function ishigami(u: readonly number[]): number {
  const [x1 = 0, x2 = 0, x3 = 0] = u.map((share) => Math.PI * (2 * share - 1));
  return Math.sin(x1) + A * Math.sin(x2) ** 2 + B * x3 ** 4 * Math.sin(x1);
}

/** Exact shares of variance, by integrating the definition. */
const V1 = 0.5 * (1 + (B * Math.PI ** 4) / 5) ** 2;
const V2 = A ** 2 / 8;
const V13 = (8 * B ** 2 * Math.PI ** 8) / 225;
const V = V1 + V2 + V13;

describe('sensitivity against published values', () => {
  it('the exact Ishigami indices are those of the check table', () => {
    expect([V1 / V, V2 / V, (V1 + V13) / V, V13 / V].map((share) => share.toFixed(4))).toEqual([
      '0.3139',
      '0.4424',
      '0.5576',
      '0.2437',
    ]);
  });

  it("first-order and total indices of Ishigami's function come out of Sobol' points within 0.003", () => {
    const design = { basePoints: 16_384, factors: 3, factorOf: [0, 1, 2] };
    const base = createPointSet({ method: 'sobol', dimensions: 6, size: design.basePoints, seed: 3 });
    const answers = Array.from({ length: designRuns(design) }, (_, run) => ishigami(designPoint(base, design, run)));
    const shares = varianceShares(answers, 3);
    const expected = [
      [V1 / V, (V1 + V13) / V],
      [V2 / V, V2 / V],
      [0, V13 / V],
    ];
    for (const [j, [first = 0, total = 0]] of expected.entries()) {
      // achieved 0.0014 and 0.0007 with this seed
      expect(Math.abs((shares?.[j]?.first ?? NaN) - first), `first ${j}`).toBeLessThan(0.003);
      expect(Math.abs((shares?.[j]?.total ?? NaN) - total), `total ${j}`).toBeLessThan(0.003);
    }
  });

  it('the rank correlation is that of the SciPy documentation of spearmanr', () => {
    expect(rankCorrelation([1, 2, 3, 4, 5], [5, 6, 7, 8, 7])).toBeCloseTo(0.8207826816681233, 14);
  });
});
