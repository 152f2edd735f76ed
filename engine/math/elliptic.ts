import { assert } from '../assert.ts';

/** Relative spread at which the series below is exact to the last bits: its remainder is of sixth order. */
const SERIES_SPREAD = 1 / 512;

/**
 * Carlson's symmetric elliptic integral of the first kind.
 *
 *   R_F(x, y, z) = ½ ∫₀^∞ dt / √((t + x)(t + y)(t + z))      [Carlson1995] eq. (1.1), algorithm sec. 2
 *
 * x, y, z  0 or more, at most one of them 0.
 *
 * Method: duplication, R_F(x, y, z) = R_F((x + λ)/4, (y + λ)/4, (z + λ)/4) with λ = √x√y + √y√z + √z√x, which draws the
 * three together by a factor of 4 a turn; then a series in their differences. Relative error below 4 ulp.
 */
export function carlsonRf(x: number, y: number, z: number): number {
  assert(
    x >= 0 && y >= 0 && z >= 0 && x + y > 0 && y + z > 0 && z + x > 0,
    'R_F needs numbers from 0, at most one of them 0',
  );
  let [a, b, c] = [x, y, z];
  for (;;) {
    const mean = (a + b + c) / 3;
    const [u, v] = [1 - a / mean, 1 - b / mean];
    if (Math.max(Math.abs(u), Math.abs(v), Math.abs(u + v)) < SERIES_SPREAD) {
      const w = -(u + v);
      const e2 = u * v - w * w;
      const e3 = u * v * w;
      return (1 + e2 * (e2 / 24 - 0.1 - (3 * e3) / 44) + e3 / 14) / Math.sqrt(mean);
    }
    const [p, q, r] = [Math.sqrt(a), Math.sqrt(b), Math.sqrt(c)];
    const lambda = p * q + q * r + r * p;
    [a, b, c] = [(a + lambda) / 4, (b + lambda) / 4, (c + lambda) / 4];
  }
}
