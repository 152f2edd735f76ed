import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uprightShift } from '../../../engine/slosh/index.ts';

const tanks = fc
  .record({
    radius: fc.double({ min: 0.1, max: 3, noNaN: true }),
    length: fc.double({ min: 0.1, max: 5, noNaN: true }),
    fill: fc.double({ min: 1e-4, max: 0.9999, noNaN: true }),
  })
  .map(({ radius, length, fill }) => ({ radius, length, depth: fill * length }));
const tilts = fc.double({ min: 1e-3, max: 1.3, noNaN: true });

// a fixed seed: the same cases every time
const RUNS = { seed: 106, numRuns: 300 };

describe('the shift of a liquid with tilt', () => {
  it('[SL8] seen in a mirror is the shift of the mirrored tilt', () => {
    fc.assert(
      fc.property(tanks, tilts, (tank, tilt) => {
        const [one, other] = [uprightShift(tank, tilt), uprightShift(tank, -tilt)];
        expect(other).toEqual({ ...one, lateral: -one.lateral });
      }),
      RUNS,
    );
  });

  it('[SL8] lowers the center along gravity, and stays inside the tank', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(tanks, tilts, (tank, tilt) => {
        const { lateral, axial, surface } = uprightShift(tank, tilt);
        seen.add(surface);
        // gravity in the tank's frame is (sin β, −cos β): potential energy falls when the surface levels
        expect(-lateral * Math.sin(tilt) + axial * Math.cos(tilt)).toBeLessThan(0);
        expect(lateral).toBeGreaterThan(0);
        expect(lateral).toBeLessThan(tank.radius);
        expect(axial + tank.depth / 2).toBeLessThan(tank.length);
      }),
      RUNS,
    );
    expect([...seen].toSorted()).toEqual(['bottom', 'bottom and top', 'top', 'wall only']);
  });

  it('[SL8] grows with tilt and scales with size', () => {
    fc.assert(
      fc.property(tanks, tilts, (tank, tilt) => {
        const shift = uprightShift(tank, tilt);
        expect(uprightShift(tank, tilt * 1.05).lateral).toBeGreaterThan(shift.lateral);
        const twice = uprightShift({ radius: 2 * tank.radius, length: 2 * tank.length, depth: 2 * tank.depth }, tilt);
        expect(Math.abs(twice.lateral / shift.lateral - 2)).toBeLessThan(1e-9);
        expect(twice.surface).toBe(shift.surface);
      }),
      RUNS,
    );
  });

  it('[SL8] times the liquid left is that of the free space: together they fill the tank', () => {
    fc.assert(
      fc.property(tanks, tilts, (tank, tilt) => {
        const free = { ...tank, depth: tank.length - tank.depth };
        const moment = tank.depth * uprightShift(tank, tilt).lateral;
        const freeMoment = free.depth * uprightShift(free, tilt).lateral;
        expect(Math.abs(moment - freeMoment)).toBeLessThan(1e-9 * tank.radius * tank.length);
      }),
      RUNS,
    );
  });
});
