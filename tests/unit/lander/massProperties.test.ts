import { describe, expect, it } from 'vitest';
import {
  inertiaAbout,
  inertiaAlong,
  massProperties,
  tankLiquid,
  type BodyPoint,
  type InertiaTensor,
  type Lander,
  type Part,
  type PartShape,
  type Tank,
} from '../../../engine/lander/index.ts';

/** A lander reduced to what has mass. */
function lump(parts: readonly Part[], tanks: readonly Tank[] = []): Lander {
  return {
    id: 'lump',
    name: 'Lump',
    summary: 'parts without legs',
    parts,
    tanks,
    legs: [],
    hull: [],
    engine: { maxThrust: 1, minThrust: 1, specificImpulse: 300, lag: 0, attitudeTorque: 1 },
    probeLength: 0,
  };
}

function part(mass: number, center: BodyPoint, shape: PartShape): Part {
  return { name: 'piece', kind: 'dry', mass, center, shape };
}

function tensorOf(parts: readonly Part[]) {
  return massProperties(lump(parts)).inertia;
}

/** The same numbers, to so many decimal places. */
function near(expected: InertiaTensor | BodyPoint, digits = 9): unknown {
  const each = Object.entries(expected).map(([key, value]) => [key, expect.closeTo(value, digits)] as const);
  return Array.isArray(expected) ? each.map(([, value]) => value) : Object.fromEntries(each);
}

describe('mass properties of pieces put together', () => {
  const middle: BodyPoint = [0.3, -0.2, 2];

  it.each(['y', 'z'] as const)('[LA1] make a cylinder along %s of its slices', (axis) => {
    const length = 3;
    const count = 6;
    const slices = Array.from({ length: count }, (_, index) => {
      const along = ((index + 0.5) / count - 0.5) * length;
      const center: BodyPoint =
        axis === 'z' ? [middle[0], middle[1], middle[2] + along] : [middle[0], middle[1] + along, middle[2]];
      return part(600 / count, center, { kind: 'cylinder', radius: 0.8, length: length / count, axis });
    });
    const whole = massProperties(lump([part(600, middle, { kind: 'cylinder', radius: 0.8, length, axis })]));
    const sliced = massProperties(lump(slices));
    expect(sliced.mass).toBeCloseTo(600, 10);
    expect(sliced.center).toEqual(near(whole.center));
    expect(sliced.inertia).toEqual(near(whole.inertia));
  });

  it.each(['y', 'z'] as const)('[LA1] make a tube along %s of its rings', (axis) => {
    const rings = [-1, 0, 1].map((along) => {
      const center: BodyPoint = axis === 'z' ? [0, 0, 2 + along] : [0, along, 2];
      return part(100, center, { kind: 'tube', radius: 0.8, length: 1, axis });
    });
    expect(tensorOf(rings)).toEqual(
      near(tensorOf([part(300, [0, 0, 2], { kind: 'tube', radius: 0.8, length: 3, axis })])),
    );
  });

  it('[LA1] make a box of eight boxes', () => {
    const pieces: Part[] = [];
    for (const x of [-0.5, 0.5])
      for (const y of [-1, 1])
        for (const z of [-1.5, 1.5]) pieces.push(part(10, [x, y, z + 4], { kind: 'box', size: [1, 2, 3] }));
    expect(tensorOf(pieces)).toEqual(near(tensorOf([part(80, [0, 0, 4], { kind: 'box', size: [2, 4, 6] })])));
  });

  it('[LA1] make a solid cylinder of thin tubes, in the limit', () => {
    const count = 400;
    const tubes = Array.from({ length: count }, (_, index) => {
      const radius = (index + 0.5) / count;
      return part(radius, [0, 0, 1], { kind: 'tube', radius, length: 2, axis: 'z' });
    });
    const mass = tubes.reduce((sum, tube) => sum + tube.mass, 0);
    const solid = tensorOf([part(mass, [0, 0, 1], { kind: 'cylinder', radius: 1, length: 2, axis: 'z' })]);
    const built = tensorOf(tubes);
    // midpoint rule: relative error 1/(2 count²)
    expect(Math.abs(built.zz / solid.zz - 1)).toBeLessThan(1 / (count * count));
    expect(Math.abs(built.xx / solid.xx - 1)).toBeLessThan(1 / (count * count));
  });

  it('[LA1] make a dumbbell of two points, products of inertia included', () => {
    const tensor = tensorOf([part(2, [1, 2, 3], { kind: 'point' }), part(2, [-1, -2, 1], { kind: 'point' })]);
    // m = 2 at ±(1, 2, 1): xx = 2·2·(4 + 1), xy = −2·2·2, …
    expect(tensor).toEqual({ xx: 20, yy: 8, zz: 20, xy: -8, xz: -4, yz: -8 });
  });

  it('[LA1] take stated moments as they are, and shift them', () => {
    const shape: PartShape = { kind: 'inertia', moments: [3, 4, 5] };
    expect(tensorOf([part(10, [1, 1, 1], shape)])).toEqual({ xx: 3, yy: 4, zz: 5, xy: 0, xz: 0, yz: 0 });
    const pair = tensorOf([part(10, [1, 0, 0], shape), part(10, [-1, 0, 0], shape)]);
    expect(pair).toEqual({ xx: 6, yy: 28, zz: 30, xy: 0, xz: 0, yz: 0 });
  });
});

describe('moment of inertia about an axis', () => {
  const tensor = tensorOf([
    part(5, [1, 2, 3], { kind: 'point' }),
    part(7, [-1, 0.5, 1], { kind: 'point' }),
    part(2, [0, -3, 2], { kind: 'box', size: [1, 2, 3] }),
  ]);

  it('[LA2] at an azimuth is that of the pieces measured from the axis', () => {
    const pieces: readonly (readonly [number, BodyPoint])[] = [
      [5, [1, 2, 3]],
      [7, [-1, 0.5, 1]],
      [3, [0, -3, 2]],
    ];
    const points = massProperties(lump(pieces.map(([mass, at]) => part(mass, at, { kind: 'point' }))));
    for (const azimuth of [0, 0.7, Math.PI / 2, 2.5, -1.2]) {
      const expected = pieces.reduce((sum, [mass, at]) => {
        const x = at[0] - points.center[0];
        const y = at[1] - points.center[1];
        const z = at[2] - points.center[2];
        const across = -x * Math.sin(azimuth) + y * Math.cos(azimuth);
        return sum + mass * (across * across + z * z);
      }, 0);
      expect(inertiaAbout(points.inertia, azimuth)).toBeCloseTo(expected, 10);
    }
  });

  it('[LA2] is the same for an axis turned by half a turn, and adds up to the trace over three axes', () => {
    expect(inertiaAbout(tensor, 0.4 + Math.PI)).toBeCloseTo(inertiaAbout(tensor, 0.4), 10);
    const sum = inertiaAbout(tensor, 0.4) + inertiaAbout(tensor, 0.4 + Math.PI / 2) + inertiaAlong(tensor, [0, 0, 1]);
    expect(sum).toBeCloseTo(tensor.xx + tensor.yy + tensor.zz, 10);
  });
});

const upright: Tank = {
  name: 'upright',
  orientation: 'upright',
  radius: 0.5,
  length: 2,
  bottomHeight: 1,
  offset: [0.4, -0.3],
  fill: 0.25,
  density: 1000,
};
const lying: Tank = { ...upright, name: 'lying', orientation: 'lying' };

describe('liquid in a tank', () => {
  it('[LA3] in an upright tank is a cylinder standing on its bottom', () => {
    const mass = 1000 * Math.PI * 0.25 * 0.5;
    const column = part(mass, [0.4, -0.3, 1.25], { kind: 'cylinder', radius: 0.5, length: 0.5, axis: 'z' });
    const liquid = massProperties(lump([], [upright]));
    expect(liquid.mass).toBeCloseTo(mass, 10);
    expect(liquid.center).toEqual(near([0.4, -0.3, 1.25]));
    expect(liquid.inertia).toEqual(near(tensorOf([column])));
  });

  it('[LA3] in a full lying tank is the whole cylinder', () => {
    const mass = 1000 * Math.PI * 0.25 * 2;
    const full = massProperties(lump([], [lying]), [1]);
    expect(full.mass).toBeCloseTo(mass, 9);
    expect(full.center).toEqual(near([0.4, -0.3, 1.5]));
    expect(full.inertia).toEqual(
      near(tensorOf([part(mass, [0.4, -0.3, 1.5], { kind: 'cylinder', radius: 0.5, length: 2, axis: 'y' })]), 8),
    );
  });

  it('[LA3] in a half full lying tank has its center 4 R/(3 pi) below the middle', () => {
    expect(tankLiquid(lying, 0.5).center[2]).toBeCloseTo(1.5 - (4 * 0.5) / (3 * Math.PI), 12);
  });

  it.each([0.02, 0.25, 0.5, 0.8, 0.99])('[LA3] in a lying tank filled to %d agrees with a sum over strips', (fill) => {
    const { mass, center, moments } = tankLiquid(lying, fill);
    // level of the surface by bisection on the strips' area, then moments by the midpoint rule
    const strips = 20_000;
    const radius = 0.5;
    const target = fill * Math.PI * radius * radius;
    let area = 0;
    let [first, second, across] = [0, 0, 0];
    for (let i = 0; i < strips && area < target; i++) {
      const z = -radius + ((i + 0.5) * 2 * radius) / strips;
      const half = Math.sqrt(radius * radius - z * z);
      const slice = Math.min((2 * half * 2 * radius) / strips, target - area);
      area += slice;
      first += slice * z;
      second += slice * z * z;
      across += (slice * half * half) / 3;
    }
    const drop = first / area;
    const squares = { x: across / area, y: 4 / 12, z: second / area - drop * drop };
    expect(center[2]).toBeCloseTo(1.5 + drop, 4);
    expect(moments[0] / mass).toBeCloseTo(squares.y + squares.z, 4);
    expect(moments[1] / mass).toBeCloseTo(squares.x + squares.z, 4);
    expect(moments[2] / mass).toBeCloseTo(squares.x + squares.y, 4);
  });

  it('[LA3] is nothing in an empty tank, and a thread along the bottom in a nearly empty one', () => {
    expect(tankLiquid(lying, 0).mass).toBe(0);
    expect(tankLiquid(upright, 0).mass).toBe(0);
    const thread = tankLiquid(lying, 1e-8);
    expect(thread.center[2]).toBeGreaterThan(1);
    expect(thread.center[2]).toBeLessThan(1.0001);
    expect(thread.moments.every(Number.isFinite)).toBe(true);
  });

  it('[LA3] follows the fills given instead of those of the lander', () => {
    const dry = part(100, [0, 0, 1], { kind: 'point' });
    const lander = lump([dry], [upright, lying]);
    expect(massProperties(lander, [0, 0]).mass).toBe(100);
    expect(massProperties(lander, [0.5, 0]).mass).toBeCloseTo(100 + 1000 * Math.PI * 0.25, 9);
    expect(() => massProperties(lander, [0.5])).toThrow('one fraction for each tank');
    expect(() => massProperties(lander, [0.5, 1.5])).toThrow('fill of tank lying');
    expect(() => massProperties(lander, [0.5, Number.NaN])).toThrow('fill of tank lying');
  });
});
