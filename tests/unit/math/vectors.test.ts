import { describe, expect, it } from 'vitest';
import { cos, sin } from '../../../engine/math/trig.ts';
import {
  add2,
  cross2,
  dot2,
  length2,
  lengthSquared2,
  perpendicular2,
  rotate2,
  scale2,
  subtract2,
  type Vec2,
} from '../../../engine/math/vec2.ts';
import {
  add3,
  cross3,
  direction3,
  dot3,
  length3,
  lengthSquared3,
  scale3,
  subtract3,
  type Vec3,
} from '../../../engine/math/vec3.ts';

describe('vectors in the plane', () => {
  const a: Vec2 = [3, -4];
  const b: Vec2 = [0.5, 2];

  it('add, subtract and scale by component', () => {
    expect(add2(a, b)).toEqual([3.5, -2]);
    expect(subtract2(a, b)).toEqual([2.5, -6]);
    expect(scale2(a, -2)).toEqual([-6, 8]);
  });

  it('have lengths and products as in any textbook', () => {
    expect([length2(a), lengthSquared2(a), dot2(a, b), cross2(a, b)]).toEqual([5, 25, -6.5, 8]);
  });

  it('turn as a whole: a vector off the axes keeps its length and gains the angle', () => {
    // (3, 4) by the angle of cosine 4/5 and sine 3/5: (12 - 12, 9 + 16)/5
    const turned = rotate2([3, 4], 4 / 5, 3 / 5);
    expect(turned[0]).toBeCloseTo(0, 14);
    expect(turned[1]).toBeCloseTo(5, 14);
  });

  it('turn counter-clockwise', () => {
    expect(perpendicular2([1, 0])).toEqual([-0, 1]);
    expect(cross2(a, perpendicular2(a))).toBe(25);
    const turned = rotate2([2, 0], cos(Math.PI / 6), sin(Math.PI / 6));
    expect(turned[0]).toBeCloseTo(Math.sqrt(3), 15);
    expect(turned[1]).toBeCloseTo(1, 15);
  });
});

describe('vectors in space', () => {
  const a: Vec3 = [2, -3, 6];
  const b: Vec3 = [1, 0.5, -2];

  it('add, subtract and scale by component', () => {
    expect(add3(a, b)).toEqual([3, -2.5, 4]);
    expect(subtract3(a, b)).toEqual([1, -3.5, 8]);
    expect(scale3(b, 4)).toEqual([4, 2, -8]);
  });

  it('have lengths and products as in any textbook', () => {
    expect([length3(a), lengthSquared3(a), dot3(a, b)]).toEqual([7, 49, -11.5]);
    expect(cross3([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
    expect(cross3(a, b)).toEqual([3, 10, 4]);
    expect([dot3(cross3(a, b), a), dot3(cross3(a, b), b)]).toEqual([0, 0]);
  });

  it('have a direction unless they are zero', () => {
    expect(direction3([0, 0, 0])).toBeUndefined();
    expect(direction3([0, -5, 0])).toEqual([0, -1, 0]);
  });
});
