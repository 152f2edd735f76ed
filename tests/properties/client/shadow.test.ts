import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shadowX } from '../../../client/views/shadow.ts';

const heights = fc.double({ min: 0, max: 220, noNaN: true });
const places = fc.double({ min: -50, max: 50, noNaN: true });
const slopes = fc.double({ min: -0.25, max: 0.25, noNaN: true });

/** Ground of one slope throughout [rad]. */
const ramped = (slope: number) => ({
  firstX: -500,
  spacing: 1000,
  heights: [-500, 500].map((x) => x * Math.tan(slope)),
});

describe('the shadow of a point', () => {
  it('lies where a straight ray through it meets the slope: h / (2 + tan θ) to the right', () => {
    fc.assert(
      fc.property(places, heights, slopes, (x, height, slope) => {
        const found = shadowX({ x, y: x * Math.tan(slope) + height }, ramped(slope));
        // two down for one across, and the slope rises toward it; six steps leave an eighth of a slope to the sixth
        expect(Math.abs(found - x - height / (2 + Math.tan(slope)))).toBeLessThanOrEqual(1e-5 * height + 1e-9);
      }),
    );
  });

  it('meets the point as that meets the ground', () => {
    fc.assert(
      fc.property(places, slopes, (x, slope) => {
        expect(shadowX({ x, y: x * Math.tan(slope) }, ramped(slope))).toBeCloseTo(x, 9);
      }),
    );
  });

  it('comes nearer all the way down', () => {
    fc.assert(
      fc.property(places, slopes, heights, heights, (x, slope, a, b) => {
        fc.pre(Math.abs(a - b) > 1e-3);
        const [low, high] = a < b ? [a, b] : [b, a];
        const [near, far] = [low, high].map((height) => shadowX({ x, y: x * Math.tan(slope) + height }, ramped(slope)));
        expect(near).toBeLessThan(far!);
      }),
    );
  });
});
