import { describe, expect, it } from 'vitest';
import { FULLEST, sloshAcross } from '../../../engine/structure/lyingSlosh.ts';
import { liquidSection, shiftAlong } from '../../../engine/structure/lyingTank.ts';
import { plainTank } from '../../support/plainTank.ts';

const LYING = plainTank({ orientation: 'lying', radius: 0.8, length: 3 });

/** Area of a circle's segment up to a depth, by summing strips. */
function areaTo(depth: number, radius: number): number {
  const strips = 20_000;
  let area = 0;
  for (let i = 0; i < strips; i++) {
    const z = ((i + 0.5) / strips) * depth - radius;
    area += 2 * Math.sqrt(radius ** 2 - z ** 2) * (depth / strips);
  }
  return area;
}

/** Center along the axis of liquid under a plane that falls toward +y, by slices, at the level that holds the volume. */
function shiftBySlices(fill: number, tilt: number): number {
  const { radius, length } = LYING;
  const slices = 400;
  const at = (level: number): { readonly volume: number; readonly moment: number } => {
    let [volume, moment] = [0, 0];
    for (let i = 0; i < slices; i++) {
      const y = ((i + 0.5) / slices - 0.5) * length;
      const half = Math.acos(1 - (level + y * Math.tan(tilt)) / radius);
      const area = radius ** 2 * (half - Math.sin(half) * Math.cos(half));
      volume += area * (length / slices);
      moment += area * y * (length / slices);
    }
    return { volume, moment };
  };
  const wanted = fill * Math.PI * radius ** 2 * length;
  let [low, high] = [0, 2 * radius];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (at(middle).volume < wanted) low = middle;
    else high = middle;
  }
  const { volume, moment } = at(low);
  return moment / volume;
}

describe('a lying tank', () => {
  it('[SU7] stands half full at the middle, with the full width', () => {
    const { depth, width, area } = liquidSection(LYING, 0.5);
    expect(depth).toBeCloseTo(0.8, 12);
    expect(width).toBeCloseTo(1.6, 12);
    expect(area).toBeCloseTo((Math.PI * 0.64) / 2, 12);
  });

  it('[SU7] has a level that holds its liquid', () => {
    for (const fill of [0.01, 0.2, 0.5, 0.7, 0.98]) {
      const { depth, area } = liquidSection(LYING, fill);
      expect(areaTo(depth, 0.8) / area).toBeCloseTo(1, 5);
    }
  });

  it('[SU7] lets its liquid run along the axis as slices under a level surface do, for a small tilt', () => {
    for (const fill of [0.3, 0.5, 0.8]) {
      const tilt = 0.01;
      expect(shiftAlong(LYING, fill, tilt).shift / shiftBySlices(fill, tilt)).toBeCloseTo(1, 3);
    }
  });

  it('[SU7] says up to which tilt that holds: until the surface meets the nearer end of a line', () => {
    expect(shiftAlong(LYING, 0.5, 0.01).upTo).toBeCloseTo(Math.atan2(0.8, 1.5), 12);
    expect(shiftAlong(LYING, 0.1, 0.01).upTo).toBeLessThan(shiftAlong(LYING, 0.3, 0.01).upTo);
    expect(shiftAlong(LYING, 0.9, 0.01).upTo).toBeCloseTo(shiftAlong(LYING, 0.1, 0.01).upTo, 10);
  });

  it('[SU7] shifts nothing when empty or full, and refuses an upright one', () => {
    for (const fill of [0, 1]) expect(shiftAlong(LYING, fill, 0.1)).toEqual({ shift: 0, upTo: Math.PI / 2 });
    expect(() => shiftAlong(plainTank(), 0.5, 0.1)).toThrow(/lies on its side/);
    for (const fill of [0, 1, -0.1, Number.NaN]) expect(() => liquidSection(LYING, fill)).toThrow(/fill/);
  });
});

describe('the swing across a lying tank', () => {
  it('is told up to a depth of FULLEST radii, and above it not at all', () => {
    const fillAt = (depth: number) => areaTo(depth * LYING.radius, LYING.radius) / (Math.PI * LYING.radius ** 2);
    expect(sloshAcross(LYING, fillAt(FULLEST - 0.01), 1.6)?.frequency).toBeGreaterThan(0);
    expect(sloshAcross(LYING, fillAt(FULLEST + 0.01), 1.6)).toBeUndefined();
  });
});
