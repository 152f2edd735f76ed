import { describe, expect, it } from 'vitest';
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import {
  prepareProfile,
  profileHeight,
  touchProfile,
  TOUCH_ARC,
  TOUCH_HEIGHT,
  TOUCH_NX,
  TOUCH_NZ,
  TOUCH_SIZE,
} from '../../../engine/touchdown/profileGround.ts';

const ground = prepareProfile({ firstX: 0, spacing: 4, heights: [0, 3, 3, 0], friction: 0.5 });
const answer = new Float64Array(TOUCH_SIZE);

describe('touchProfile', () => {
  it('measures along the normal of a slope, and the place along the ground', () => {
    // on the 3-4-5 slope: 1 m out along the normal (-0.6, 0.8) from the middle (2, 1.5)
    touchProfile(ground, 2 - 0.6, 1.5 + 0.8, answer);
    expect(answer[TOUCH_HEIGHT]).toBeCloseTo(1, 12);
    expect(answer[TOUCH_ARC]).toBeCloseTo(2.5, 12);
    expect(answer[TOUCH_NX]).toBeCloseTo(-0.6, 12);
    expect(answer[TOUCH_NZ]).toBeCloseTo(0.8, 12);
  });

  it('is negative below the ground', () => {
    touchProfile(ground, 6, 2.9, answer);
    expect(answer[TOUCH_HEIGHT]).toBeCloseTo(-0.1, 12);
    expect(answer[TOUCH_NZ]).toBe(1);
  });

  it('points from the vertex at a place outside a convex corner', () => {
    touchProfile(ground, 4 - 0.1, 3 + 0.3, answer);
    expect(answer[TOUCH_HEIGHT]).toBeCloseTo(Math.sqrt(0.1), 12);
    expect(answer[TOUCH_NX]).toBeCloseTo(-0.1 / Math.sqrt(0.1), 12);
  });

  it('is continuous along a path across all vertices, above and below', () => {
    for (const depth of [0.2, -0.2]) {
      touchProfile(ground, 0.5, profileHeight(ground, 0.5) + depth, answer);
      let before = answer[TOUCH_HEIGHT]!;
      let largest = 0;
      let steps = 0;
      for (let x = 0.501; x < 11.5; x += 0.001) {
        touchProfile(ground, x, profileHeight(ground, x) + depth, answer);
        largest = Math.max(largest, Math.abs(answer[TOUCH_HEIGHT]! - before));
        before = answer[TOUCH_HEIGHT]!;
        steps++;
      }
      expect(largest).toBeGreaterThan(0);
      expect(largest).toBeLessThan(0.0011);
      expect(steps).toBeGreaterThan(10_000);
    }
  });

  it('finds the nearest of all its segments, from close by and from hundreds of meters above', () => {
    const random = seedRandom(5);
    const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
    const spacing = 0.5;
    const heights = [0];
    while (heights.length < 400) heights.push(heights.at(-1)! + between(-0.4, 0.42));
    const bent = prepareProfile({ firstX: -100, spacing, heights, friction: 0.5 });
    for (const most of [2, 20, 300]) {
      for (let point = 0; point < 100; point++) {
        const x = between(-99, 98);
        const z = profileHeight(bent, x) + between(0, most);
        const nearest = Math.min(...heights.slice(1).map((_, i) => distanceFrom(i, x, z)));
        touchProfile(bent, x, z, answer);
        expect(answer[TOUCH_HEIGHT]).toBeCloseTo(nearest, 9);
      }
    }

    /** Of a point from a segment; the first and the last go on. */
    function distanceFrom(segment: number, x: number, z: number): number {
      const dx = x + 100 - segment * spacing;
      const dz = z - heights[segment]!;
      const rise = heights[segment + 1]! - heights[segment]!;
      const from = segment === 0 ? -Infinity : 0;
      const to = segment === heights.length - 2 ? Infinity : 1;
      const share = Math.max(from, Math.min(to, (dx * spacing + dz * rise) / (spacing ** 2 + rise ** 2)));
      return Math.hypot(dx - share * spacing, dz - share * rise);
    }
  });

  it('goes on straight beyond both ends', () => {
    expect(profileHeight(ground, -4)).toBeCloseTo(-3, 12);
    expect(profileHeight(ground, 16)).toBeCloseTo(-3, 12);
    // 1 m out along the normals of the first and last slope, 5 m beyond either end along the ground
    for (const [x, z, arc, nx] of [
      [-4 - 0.6, -3 + 0.8, -5, -0.6],
      [16 + 0.6, -3 + 0.8, 5 + 4 + 5 + 5, 0.6],
    ] as const) {
      touchProfile(ground, x, z, answer);
      expect([TOUCH_HEIGHT, TOUCH_ARC, TOUCH_NX, TOUCH_NZ].map((field) => answer[field]!.toFixed(9))).toEqual(
        [1, arc, nx, 0.8].map((figure) => figure.toFixed(9)),
      );
    }
  });
});
