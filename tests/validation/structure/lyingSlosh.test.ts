import { describe, expect, it } from 'vitest';
import { canalMode, FULLEST, sloshAlong } from '../../../engine/structure/lyingSlosh.ts';
import { plainTank } from '../../support/plainTank.ts';

describe('slosh of a lying cylinder against published values', () => {
  it('[SU8] half full, ω² R / g of the first mode across is 1.3557', () => {
    // [McIver1989] table for circular cylinders, also [Budiansky1960]; figure from memory
    expect(canalMode(1).eigenvalue).toBeCloseTo(1.3557, 4);
  });

  it('[SU8] nearly empty, the liquid swings as one body about the axis: ω² R / g goes to 1 and the share to 1', () => {
    // a frictionless pendulum of length R; the corrections are of the order of the depth
    for (const depth of [0.1, 0.01, 0.001]) {
      const { eigenvalue, massShare } = canalMode(depth);
      expect(Math.abs(eigenvalue - 1)).toBeLessThan(0.25 * depth);
      expect(Math.abs(massShare - 1)).toBeLessThan(0.5 * depth);
    }
  });

  it('[SU8] filling up, ω² b / g with half the surface width b rises toward 2.0061, that of a slot over deep liquid', () => {
    // [Henrici1970], strip-like aperture; figure from memory
    const rising = [1, 1.25, 1.5, 1.75, FULLEST].map(
      (depth) => canalMode(depth).eigenvalue * Math.sqrt(depth * (2 - depth)),
    );
    expect(rising).toEqual(rising.toSorted((a, b) => a - b));
    expect(rising[rising.length - 1]).toBeGreaterThan(1.8);
    expect(rising[rising.length - 1]).toBeLessThan(2.0061);
  });

  it('[SU8] along the axis of a long tank, waves have the speed √(g A / b) of a canal', () => {
    // [Lamb1932] art. 170; half full, A / b = π R / 4
    const tank = plainTank({ orientation: 'lying', radius: 0.5, length: 40 });
    const { frequency } = sloshAlong(tank, 0.5, 1.62);
    const speed = Math.sqrt((1.62 * Math.PI * 0.5) / 4);
    expect(frequency / ((Math.PI / 40) * speed)).toBeCloseTo(1, 3);
  });
});
