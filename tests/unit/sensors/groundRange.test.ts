import { describe, expect, it } from 'vitest';
import { groundRange } from '../../../engine/sensors/groundRange.ts';
import { evenGround } from '../../support/dropLander.ts';
import { LEVEL } from '../../support/kinematicTruth.ts';

describe('range along the body axis', () => {
  it('[SE4] is height over cosine above level ground', () => {
    for (const angle of [-0.6, -0.1, 0, 0.1, 0.6])
      expect(groundRange(LEVEL, { x: 3, y: 50, angle }, 500)).toBeCloseTo(50 / Math.cos(angle), 9);
  });

  // from the point (0, h) down along (sin θ, −cos θ) to y = x·tan s: r = h·cos s / cos(θ − s)... sign: r(cos θ + sin θ tan s) = h
  it('[SE4] meets a slope where the straight lines cross', () => {
    for (const slope of [-0.15, 0.15])
      for (const angle of [-0.3, 0, 0.3]) {
        const expected = 40 / (Math.cos(angle) + Math.sin(angle) * Math.tan(slope));
        expect(groundRange(evenGround(slope), { x: 0, y: 40, angle }, 500)).toBeCloseTo(expected, 9);
      }
  });

  it('[SE4] stops at a ridge that stands before what lies behind', () => {
    // a wall 10 m high from x = 9 to x = 11
    const terrain = {
      firstX: 0,
      spacing: 1,
      friction: 1,
      heights: Array.from({ length: 41 }, (_, i) => (i === 10 ? 10 : 0)),
    };
    const angle = Math.PI / 6;
    // through (0, 24), 30 degrees to the right: on the wall's near face y = 10·(x − 9), met where 24 − x·√3 = 10·(x − 9)
    const x = 114 / (10 + Math.sqrt(3));
    expect(groundRange(terrain, { x: 0, y: 24, angle }, 500)).toBeCloseTo(x / Math.sin(angle), 9);
    // and from the other side the same wall in the mirror
    expect(groundRange(terrain, { x: 20, y: 24, angle: -angle }, 500)).toBeCloseTo(x / Math.sin(angle), 9);
  });

  it('[SE4] is small just above the ground, and nothing in it', () => {
    expect(groundRange(LEVEL, { x: 0, y: 0.5, angle: 0 }, 500)).toBeCloseTo(0.5, 12);
    expect(groundRange(LEVEL, { x: 0, y: -0.5, angle: 0 }, 500)).toBe(0);
  });

  it('[SE4] has no answer beyond its reach or when the axis points up', () => {
    expect(groundRange(LEVEL, { x: 0, y: 501, angle: 0 }, 500)).toBeUndefined();
    expect(groundRange(LEVEL, { x: 0, y: 5, angle: 2 }, 500)).toBeUndefined();
  });
});
