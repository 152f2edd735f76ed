import { describe, expect, it } from 'vitest';
import { principalAxes } from '../../../engine/touchdown/principalAxes.ts';
import { cross3, dot3, type Vec3 } from '../../../engine/math/index.ts';

describe('principalAxes', () => {
  it('leaves a diagonal tensor as it is', () => {
    const { moments, axes } = principalAxes({ xx: 3, yy: 1, zz: 2, xy: 0, xz: 0, yz: 0 });
    expect(moments).toEqual([3, 1, 2]);
    expect(axes).toEqual([
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ]);
  });

  it('satisfies I a = moment a with right-handed unit axes for a full tensor', () => {
    const tensor = { xx: 900, yy: 1200, zz: 700, xy: -130, xz: 60, yz: 210 };
    const { moments, axes } = principalAxes(tensor);
    const apply = (v: Vec3): Vec3 => [
      tensor.xx * v[0] + tensor.xy * v[1] + tensor.xz * v[2],
      tensor.xy * v[0] + tensor.yy * v[1] + tensor.yz * v[2],
      tensor.xz * v[0] + tensor.yz * v[1] + tensor.zz * v[2],
    ];
    axes.forEach((axis, i) => {
      apply(axis).forEach((value, k) => expect(value).toBeCloseTo(moments[i]! * axis[k]!, 9));
      expect(dot3(axis, axis)).toBeCloseTo(1, 14);
    });
    expect(dot3(cross3(axes[0], axes[1]), axes[2])).toBeCloseTo(1, 14);
    expect(moments[0] + moments[1] + moments[2]).toBeCloseTo(900 + 1200 + 700, 9);
  });

  it('finds the exact moments of a 2 x 2 block', () => {
    // eigenvalues of [[2, 1], [1, 2]] are 1 and 3
    const { moments } = principalAxes({ xx: 2, yy: 2, zz: 5, xy: 1, xz: 0, yz: 0 });
    expect(moments.toSorted((a, b) => a - b).map((m) => Math.round(m * 1e12) / 1e12)).toEqual([1, 3, 5]);
  });
});
