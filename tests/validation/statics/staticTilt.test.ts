import { describe, expect, it } from 'vitest';
import type { BodyPoint } from '../../../engine/lander/index.ts';
import { leastStaticTilt, standOn, staticTilt } from '../../../engine/statics/index.ts';

/** Static tilt against figures from geometry and road practice; achieved: all printed places. */
const DEG = Math.PI / 180;

function regular(count: number, radius: number): readonly BodyPoint[] {
  return Array.from({ length: count }, (_, index): BodyPoint => {
    const azimuth = (2 * Math.PI * index) / count;
    return [radius * Math.cos(azimuth), radius * Math.sin(azimuth), 0];
  });
}

function leastTilt(soles: readonly BodyPoint[], height: number): number {
  const stance = standOn(soles, [0, 0, height]);
  if (stance.kind !== 'stands') throw new Error(stance.reason);
  return leastStaticTilt(stance).tilt;
}

describe('static tilt of n equal legs (plane geometry)', () => {
  it.each([
    [3, 0.5],
    [4, 0.7071],
    [5, 0.809],
    [6, 0.866],
  ])('[ST2] of %d is that of a half stance of %d radii', (count, share) => {
    const halfStance = 4 * Math.tan(leastTilt(regular(count, 1), 4));
    expect(Math.abs(halfStance - share)).toBeLessThan(0.5e-4);
  });

  it.each([3, 4, 5, 6])('[ST2] of %d with b/h 0.25 is 14.0362 deg', (count) => {
    const radius = 1 / Math.cos(Math.PI / count);
    expect(Math.abs(leastTilt(regular(count, radius), 4) / DEG - 14.0362)).toBeLessThan(0.5e-4);
  });
});

describe('static tilt toward a foot (plane geometry)', () => {
  it.each([3, 4, 5, 6])(
    '[ST2] of %d legs is reached when the foot is straight below the center of mass, and lies between them',
    (count) => {
      const [radius, height] = [1.5, 4];
      const stance = standOn(regular(count, radius), [0, 0, height]);
      if (stance.kind !== 'stands') throw new Error(stance.reason);
      // over a foot tan = r / h, over an edge that much times cos of half the angle between feet
      const over = (azimuth: number) => (height / radius) * Math.tan(staticTilt(stance, azimuth));
      expect(over(0)).toBeCloseTo(1, 12);
      expect(over(Math.PI / count)).toBeCloseTo(Math.cos(Math.PI / count), 12);
      expect(over(Math.PI / count + 0.1) * Math.cos(0.1)).toBeCloseTo(Math.cos(Math.PI / count), 12);
    },
  );
});

describe('static stability factor of road vehicles [NHTSA2001, from memory]', () => {
  const wheels: readonly BodyPoint[] = [
    [1.55 / 2, 1.4, 0],
    [-1.55 / 2, 1.4, 0],
    [-1.55 / 2, -1.4, 0],
    [1.55 / 2, -1.4, 0],
  ];

  it('[ST2] is the tangent of the static tilt: 1.107143 for a track of 1.55 m and a height of 0.70 m', () => {
    expect(Math.abs(Math.tan(leastTilt(wheels, 0.7)) - 1.107143)).toBeLessThan(0.5e-6);
  });

  it('[ST2] of 1.107143 is a static tilt of 47.9108 deg', () => {
    expect(Math.abs(leastTilt(wheels, 0.7) / DEG - 47.9108)).toBeLessThan(0.5e-4);
  });
});
