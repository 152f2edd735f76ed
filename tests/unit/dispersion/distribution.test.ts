import { describe, expect, it } from 'vitest';
import { choose, pairQuantile, quantile, reach, type Distribution } from '../../../engine/dispersion/distribution.ts';
import { normalProbability } from '../../../engine/math/normalDistribution.ts';

const GRID = Array.from({ length: 2001 }, (_, i) => (i + 0.5) / 2001);

/** Mean and deviation of a distribution by the midpoint rule over its quantile function. */
function moments(distribution: Distribution): { readonly mean: number; readonly deviation: number } {
  const grid = Array.from({ length: 20_000 }, (_, i) => quantile(distribution, (i + 0.5) / 20_000));
  const mean = grid.reduce((sum, x) => sum + x, 0) / grid.length;
  return { mean, deviation: Math.sqrt(grid.reduce((sum, x) => sum + (x - mean) ** 2, 0) / grid.length) };
}

describe('distributions', () => {
  it('[DI1] invert their own probability: normal', () => {
    for (const u of GRID) {
      const z = (quantile({ kind: 'normal', mean: 3, deviation: 0.5 }, u) - 3) / 0.5;
      expect(normalProbability(z)).toBeCloseTo(u, 13);
    }
  });

  it('[DI1] invert their own probability: truncated normal, also far in either tail', () => {
    for (const [low, high] of [
      [-1, 2],
      [4, 4.5],
      [-6, -5],
      [5, 40],
    ] as const) {
      const part = normalProbability(-low) - normalProbability(-high);
      for (const u of GRID) {
        const x = quantile({ kind: 'truncated normal', mean: 0, deviation: 1, low, high }, u);
        expect(x >= low && x <= high).toBe(true);
        expect((normalProbability(-low) - normalProbability(-x)) / part).toBeCloseTo(u, 9);
      }
    }
  });

  it('[DI1] invert their own probability: Rayleigh, with and without a cut-off', () => {
    for (const u of GRID) {
      const x = quantile({ kind: 'rayleigh', scale: 2 }, u);
      expect(1 - Math.exp(-(x ** 2) / 8)).toBeCloseTo(u, 13);
      const cut = quantile({ kind: 'rayleigh', scale: 2, high: 3 }, u);
      expect(cut).toBeLessThanOrEqual(3);
      expect((1 - Math.exp(-(cut ** 2) / 8)) / (1 - Math.exp(-9 / 8))).toBeCloseTo(u, 13);
    }
  });

  it('[DI1] have the textbook mean and deviation', () => {
    const uniform = moments({ kind: 'uniform', low: -2, high: 4 });
    expect(uniform.mean).toBeCloseTo(1, 10);
    expect(uniform.deviation).toBeCloseTo(6 / Math.sqrt(12), 6);
    const rayleigh = moments({ kind: 'rayleigh', scale: 2 });
    expect(rayleigh.mean).toBeCloseTo(2 * Math.sqrt(Math.PI / 2), 3);
    expect(rayleigh.deviation).toBeCloseTo(2 * Math.sqrt(2 - Math.PI / 2), 2);
    expect(moments({ kind: 'constant', value: 5 })).toEqual({ mean: 5, deviation: 0 });
  });

  it('[DI1] give discrete values their weights, in the order given', () => {
    const choices = [
      { value: 'a', weight: 1 },
      { value: 'b', weight: 2 },
      { value: 'c', weight: 1 },
    ];
    expect([0.01, 0.24, 0.26, 0.74, 0.76, 0.999].map((u) => choose(choices, u))).toEqual([
      'a',
      'a',
      'b',
      'b',
      'c',
      'c',
    ]);
  });

  it('[DI1] correlate a pair of normals as asked, each with its own mean and deviation', () => {
    const pair = { means: [1, -2], deviations: [0.5, 3], correlation: 0.6 } as const;
    const side = 150;
    const draws = Array.from({ length: side * side }, (_, i) =>
      pairQuantile(pair, ((i % side) + 0.5) / side, (Math.floor(i / side) + 0.5) / side),
    );
    const mean = (f: (draw: readonly [number, number]) => number): number =>
      draws.reduce((sum, draw) => sum + f(draw), 0) / draws.length;
    const [mx, my] = [mean((d) => d[0]), mean((d) => d[1])];
    const [sx, sy] = [Math.sqrt(mean((d) => (d[0] - mx) ** 2)), Math.sqrt(mean((d) => (d[1] - my) ** 2))];
    expect(mx).toBeCloseTo(1, 8);
    expect(my).toBeCloseTo(-2, 8);
    expect(sx).toBeCloseTo(0.5, 1);
    expect(sy).toBeCloseTo(3, 1);
    expect(mean((d) => (d[0] - mx) * (d[1] - my)) / (sx * sy)).toBeCloseTo(0.6, 2);
  });

  it('[DI2] reach no farther than any point set drives them', () => {
    const { low, high } = reach({ kind: 'normal', mean: 10, deviation: 1 });
    expect(low).toBeGreaterThan(1.7);
    expect(high).toBeLessThan(18.3);
    expect(
      reach({
        kind: 'discrete',
        choices: [
          { value: 3, weight: 1 },
          { value: -1, weight: 1 },
        ],
      }),
    ).toEqual({ low: -1, high: 3 });
  });
});
