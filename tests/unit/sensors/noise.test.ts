import { describe, expect, it } from 'vitest';
import { addressedDeviate, addressedUniform, noiseKey } from '../../../engine/sensors/noise.ts';

const DRAWS = 100_000;

/** How far a mean of so many standard normal products may be off: 4 standard errors. */
const CLOSE = 4 / Math.sqrt(DRAWS);

function z(i: number): number {
  return addressedDeviate(noiseKey(5), 1, i, 0);
}

function mean(value: (i: number) => number): number {
  let sum = 0;
  for (let i = 0; i < DRAWS; i++) sum += value(i);
  return sum / DRAWS;
}

describe('addressed noise', () => {
  it('[SE1] is standard normal: mean, variance, skew and kurtosis', () => {
    expect(Math.abs(mean(z))).toBeLessThan(CLOSE);
    // standard errors of the moments of a normal sample: √2, √15, √96 over √n
    expect(Math.abs(mean((i) => z(i) ** 2) - 1)).toBeLessThan(CLOSE * Math.sqrt(2));
    expect(Math.abs(mean((i) => z(i) ** 3))).toBeLessThan(CLOSE * Math.sqrt(15));
    expect(Math.abs(mean((i) => z(i) ** 4) - 3)).toBeLessThan(CLOSE * Math.sqrt(96));
  });

  it.each([
    ['the next tick', (i: number) => addressedDeviate(noiseKey(5), 1, i + 1, 0)],
    ['the tick a report later', (i: number) => addressedDeviate(noiseKey(5), 1, i + 6, 0)],
    ['the next component', (i: number) => addressedDeviate(noiseKey(5), 1, i, 1)],
    ['the next sensor', (i: number) => addressedDeviate(noiseKey(5), 2, i, 0)],
    ['the next seed', (i: number) => addressedDeviate(noiseKey(6), 1, i, 0)],
    ['a seed 2^32 on', (i: number) => addressedDeviate(noiseKey(5 + 2 ** 32), 1, i, 0)],
  ])('[SE1] is unrelated to that of %s', (_, other) => {
    expect(Math.abs(mean((i) => addressedDeviate(noiseKey(5), 1, i, 0) * other(i)))).toBeLessThan(CLOSE);
  });

  it('[SE1] is spread evenly, over ticks and over seeds', () => {
    for (const draw of [
      (i: number) => addressedUniform(noiseKey(3), 2, i, 1),
      (i: number) => addressedUniform(noiseKey(i), 2, 7, 1),
    ]) {
      const slices = Array.from({ length: 64 }, () => 0);
      for (let i = 0; i < DRAWS; i++) slices[Math.floor(draw(i) * 64)]!++;
      const chiSquare = slices.reduce((sum, n) => sum + (n - DRAWS / 64) ** 2 / (DRAWS / 64), 0);
      // 63 degrees of freedom: 0.001 and 0.999 quantiles (tables)
      expect(chiSquare).toBeLessThan(103.4);
      expect(chiSquare).toBeGreaterThan(32);
    }
  });
});
