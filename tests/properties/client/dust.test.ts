import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grainAt, throwOf } from '../../../client/views/dust.ts';

/** Ground of one slope throughout [rad]. */
function ramped(slope: number) {
  const heights = Array.from({ length: 201 }, (_, i) => (i - 100) * Math.tan(slope));
  return { firstX: -100, spacing: 1, heights };
}

const puffs = fc.record({
  seconds: fc.integer({ min: 0, max: 6000 }).map((tick) => tick / 60),
  x: fc.double({ min: -20, max: 20, noNaN: true }),
  half: fc.double({ min: 0, max: 2, noNaN: true }),
  strength: fc.double({ min: 0.05, max: 1, noNaN: true }),
  grains: fc.constant(8),
});
const slopes = fc.double({ min: -0.25, max: 0.25, noNaN: true });
const gravities = fc.constantFrom(1.62, 3.71, 9.81);
const grains = fc.nat(60);

describe('a grain of dust', () => {
  it('comes down on the slope where a throw on an incline does: 2 v² cos α sin(α − θ) / (g cos θ) across', () => {
    fc.assert(
      fc.property(puffs, slopes, gravities, grains, (puff, slope, gravity, i) => {
        const thrown = throwOf(puff, i, ramped(slope));
        // seen along its own way out, the slope rises or falls before it
        const out = Math.sign(thrown.vx);
        const [alpha, theta] = [Math.atan2(thrown.vy, Math.abs(thrown.vx)), out * slope];
        const squared = thrown.vx ** 2 + thrown.vy ** 2;
        const across = (2 * squared * Math.cos(alpha) * Math.sin(alpha - theta)) / (gravity * Math.cos(theta));
        const landed = grainAt(thrown, gravity, across / Math.abs(thrown.vx));
        expect(landed.x - thrown.x).toBeCloseTo(out * across, 6);
        expect(landed.y).toBeCloseTo(Math.tan(slope) * landed.x, 6);
        // up to there it is over the ground, and after that it would be under it
        const before = grainAt(thrown, gravity, (0.5 * across) / Math.abs(thrown.vx));
        expect(before.y).toBeGreaterThan(Math.tan(slope) * before.x);
      }),
    );
  });

  it('leaves low: nearer to the slope than 45 degrees, to either side in turn', () => {
    fc.assert(
      fc.property(puffs, slopes, grains, (puff, slope, i) => {
        const { vx, vy } = throwOf(puff, i, ramped(slope));
        const along = vx * Math.cos(slope) + vy * Math.sin(slope);
        const away = vy * Math.cos(slope) - vx * Math.sin(slope);
        expect(away).toBeGreaterThan(0);
        expect(away).toBeLessThan(Math.abs(along));
        expect(Math.sign(along)).toBe(i % 2 === 0 ? 1 : -1);
      }),
    );
  });

  it('is thrown alike whenever the same moment is drawn', () => {
    fc.assert(
      fc.property(puffs, slopes, grains, (puff, slope, i) => {
        expect(throwOf({ ...puff }, i, ramped(slope))).toEqual(throwOf(puff, i, ramped(slope)));
      }),
    );
  });
});
