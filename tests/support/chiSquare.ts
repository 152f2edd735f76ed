import { normalQuantile } from '../../engine/math/normalDistribution.ts';

/**
 * Quantile of the chi-square distribution by Wilson and Hilferty (1931): n·(1 − 2/(9n) + z·√(2/(9n)))³. For n from 100 on within 0.1 % of the
 * tables at the levels used here.
 */
function chiSquareQuantile(freedom: number, share: number): number {
  const spread = 2 / (9 * freedom);
  return freedom * (1 - spread + normalQuantile(share) * Math.sqrt(spread)) ** 3;
}

/** Between these the mean of `count` squares of `freedom` degrees lies with 99.9 % probability, half of the rest on each side. */
export function meanSquareBounds(count: number, freedom = 1): readonly [low: number, high: number] {
  const total = count * freedom;
  return [chiSquareQuantile(total, 0.0005) / count, chiSquareQuantile(total, 0.9995) / count];
}
