import { describe, expect, it } from 'vitest';
import {
  bodyTilt,
  contactPlanes,
  landerStance,
  leastStaticTilt,
  slopeMargin,
  standOn,
  staticTilt,
  type Footing,
  type Standing,
} from '../../../engine/statics/index.ts';
import type { BodyPoint } from '../../../engine/lander/index.ts';
import { LANDERS } from '../../../levels/index.ts';

const DEG = Math.PI / 180;

function ring(count: number, radius: number, first = 0): readonly BodyPoint[] {
  return Array.from({ length: count }, (_, index): BodyPoint => {
    const azimuth = first + (2 * Math.PI * index) / count;
    return [radius * Math.cos(azimuth), radius * Math.sin(azimuth), 0];
  });
}

const square = ring(4, Math.SQRT2, 45 * DEG);

function stands(soles: readonly BodyPoint[], center: BodyPoint, ground: Pick<Footing, 'slope' | 'fallAzimuth'> = {}) {
  const stance = standOn(soles, center, ground);
  if (stance.kind !== 'stands') throw new Error(stance.reason);
  return stance;
}

/** Least distance of the foot point to an edge of the plane on these feet [m]. */
function spare(soles: readonly BodyPoint[], feet: readonly number[], center: BodyPoint): number {
  const plane = contactPlanes(soles, center).find((each) => each.feet.join() === feet.join());
  return Math.min(...(plane?.edges ?? []).map((edge) => edge.distance));
}

describe('static tilt', () => {
  it('[ST2] toward an azimuth is atan(rho / h), rho to the edge along it', () => {
    const stance = stands(square, [0, 0, 2]);
    expect(staticTilt(stance, 0)).toBeCloseTo(Math.atan(1 / 2), 14);
    expect(staticTilt(stance, 30 * DEG)).toBeCloseTo(Math.atan(1 / Math.cos(30 * DEG) / 2), 14);
    expect(staticTilt(stance, 45 * DEG)).toBeCloseTo(Math.atan(Math.SQRT2 / 2), 14);
    expect(staticTilt(stance, -135 * DEG)).toBeCloseTo(Math.atan(Math.SQRT2 / 2), 14);
  });

  it('[ST2] with an offset center of mass is least over the edge it is nearest to', () => {
    const stance = stands(square, [0.1, -0.4, 2]);
    expect(leastStaticTilt(stance)).toMatchObject({
      tilt: expect.closeTo(Math.atan(0.6 / 2), 14),
      azimuth: expect.closeTo(-90 * DEG, 14),
    });
    expect(staticTilt(stance, 90 * DEG)).toBeCloseTo(Math.atan(1.4 / 2), 14);
  });

  it('[ST2] names the first of equal edges, however their last bits fall', () => {
    for (const count of [3, 4, 5, 6, 7, 8, 12]) {
      const { azimuth } = leastStaticTilt(stands(ring(count, 1), [0, 0, 1]));
      expect(azimuth).toBeLessThanOrEqual(-Math.PI + (2 * Math.PI) / count + 1e-9);
    }
  });

  it('[ST2] is the angle at which gravity, tilted, passes the edge: found by tilting step by step', () => {
    const center: BodyPoint = [0.2, 0.3, 1.7];
    const soles = ring(5, 2, 0.3);
    const stance = stands(soles, center);
    for (const azimuth of [0, 1, 2.2, -1.4, 3]) {
      let [low, high] = [0, Math.PI / 2];
      while (high - low > 1e-12) {
        const tilt = (low + high) / 2;
        if (standOn(soles, center, { slope: tilt, fallAzimuth: azimuth }).kind === 'stands') low = tilt;
        else high = tilt;
      }
      expect(staticTilt(stance, azimuth)).toBeCloseTo(low, 8);
    }
  });
});

describe('margin on a slope', () => {
  it('[ST3] is what the slope leaves of the static tilt toward the fall line', () => {
    const stance = stands(square, [0, 0, 2]);
    expect(slopeMargin(stance, 8 * DEG, 0)).toBeCloseTo(Math.atan(0.5) - 8 * DEG, 14);
    expect(slopeMargin(stance, 30 * DEG, 0)).toBeLessThan(0);
    expect(slopeMargin(stance, 30 * DEG, 45 * DEG)).toBeGreaterThan(0);
  });

  it('[ST3] leaves nothing to stand on once it is used up', () => {
    const center: BodyPoint = [0, 0, 2];
    const limit = Math.atan(0.5);
    expect(standOn(square, center, { slope: limit - 1e-6, fallAzimuth: 0 }).kind).toBe('stands');
    expect(standOn(square, center, { slope: limit + 1e-6, fallAzimuth: 0 })).toEqual({
      kind: 'cannotStand',
      reason: 'center of mass outside the footprint',
    });
    expect(standOn(square, center, { slope: limit + 1e-6, fallAzimuth: 45 * DEG }).kind).toBe('stands');
  });

  it('[ST3] tilts the body by the slope', () => {
    const stance = stands(square, [0, 0, 2]);
    expect(bodyTilt(stance, 8 * DEG, 1)).toBeCloseTo(8 * DEG, 14);
  });
});

describe('a lander that cannot stand', () => {
  it('[ST4] has its center of mass outside the footprint, or above an edge', () => {
    const reason = 'center of mass outside the footprint';
    expect(standOn(square, [1.2, 0, 2])).toEqual({ kind: 'cannotStand', reason });
    expect(standOn(square, [1, 0, 2])).toEqual({ kind: 'cannotStand', reason });
    expect(standOn(square.slice(0, 3), [0, 0, 2])).toEqual({ kind: 'cannotStand', reason });
  });

  it('[ST4] has fewer than three footpads off a line', () => {
    const reason = 'fewer than three footpads off a line';
    const row: readonly BodyPoint[] = [
      [0, -1, 0],
      [0, 0, 0],
      [0, 1, 0],
    ];
    for (const soles of [[], square.slice(0, 2), row])
      expect(standOn(soles, [0, 0, 1])).toEqual({ kind: 'cannotStand', reason });
  });

  it('[ST4] is not a lander whose center of mass lies a millimeter inside', () => {
    expect(standOn(square, [0.999, 0, 2]).kind).toBe('stands');
  });
});

describe('missing legs', () => {
  const [trivet, steeple] = LANDERS;
  if (trivet === undefined || steeple === undefined) throw new Error('the example landers are there');

  it('[ST5] leave a centered four-legged lander without a footprint, and a six-legged one with a smaller one', () => {
    expect(landerStance(trivet, { missing: [2] }).kind).toBe('cannotStand');
    const whole = landerStance(steeple) as Standing;
    const maimed = landerStance(steeple, { missing: [2] }) as Standing;
    expect(leastStaticTilt(maimed).tilt).toBeLessThan(leastStaticTilt(whole).tilt);
    expect(maimed.plane.feet).toEqual([0, 1, 3, 4, 5]);
  });

  it('[ST5] keep the numbers of the legs that are left', () => {
    const maimed = landerStance(steeple, { missing: [2] }) as Standing;
    expect(maimed.edges.map(({ from, to }) => [from, to])).toContainEqual([1, 3]);
    expect(leastStaticTilt(maimed).edge).toMatchObject({ from: 1, to: 3 });
  });

  it('[ST5] must be legs of the lander, and rises one a leg', () => {
    expect(() => landerStance(trivet, { missing: [4] })).toThrow('missing legs');
    expect(() => landerStance(trivet, { rises: [0.1] })).toThrow('rises');
  });
});

describe('a pad that has sunk in or stands on a rock', () => {
  it('[ST6] tilts the contact plane of a tripod by the rise over the distance to the opposite edge', () => {
    // pad 0 at azimuth 0: the opposite edge is 1.5 radii away
    const soles = ring(3, 2).map(([x, y, z], index): BodyPoint => [x, y, index === 0 ? z - 0.3 : z]);
    const stance = stands(soles, [0, 0, 1.5]);
    expect(stance.plane.feet).toEqual([0, 1, 2]);
    expect(stance.lean.angle).toBeCloseTo(Math.atan(0.3 / 3), 14);
    // the pad on the rock is lifted, so the body leans away from it
    expect(Math.abs(stance.lean.azimuth)).toBeCloseTo(Math.PI, 12);
  });

  it('[ST6] moves the foot point of the center of mass toward the low side', () => {
    const soles = ring(3, 2).map(([x, y, z], index): BodyPoint => [x, y, index === 0 ? z - 0.3 : z]);
    const stance = stands(soles, [0, 0, 1.5]);
    const away = stance.edges.find((edge) => Math.abs(Math.abs(edge.normal) - Math.PI) < 1e-9);
    // plane through (2, 0, -0.3) and (-1, ±√3, 0): the center's foot lies lower along it
    const slope = Math.atan(0.1);
    const alongPlane = 1 / Math.cos(slope) - (1.5 + 0.1) * Math.sin(slope);
    expect(away?.distance).toBeCloseTo(alongPlane, 12);
    expect(away?.height).toBeCloseTo((1.5 + 0.1) * Math.cos(slope), 12);
  });

  it('[ST6] lets a four-legged lander rock: it rests on three pads and leaves the fourth above', () => {
    const soles = square.map(([x, y, z], index): BodyPoint => [x, y, index === 0 ? z - 0.1 : z]);
    const stance = stands(soles, [0, 0, 1.5]);
    expect(stance.plane.feet).toHaveLength(3);
    expect(stance.plane.feet).toContain(0);
    expect(stance.plane.feet).toContain(2);
    // an inner edge runs from pad 0 to pad 2: turning over it is no fall
    expect(stance.edges).toHaveLength(4);
    expect(leastStaticTilt(stance).tilt).toBeGreaterThan(30 * DEG);
  });

  it('[ST6] carries the center of mass: an offset one decides which pads it rests on', () => {
    const soles = square.map(([x, y, z], index): BodyPoint => [x, y, index === 0 ? z - 0.1 : z]);
    // pads 0 to 3 stand at 45, 135, 225, 315 degrees
    expect(stands(soles, [-0.3, 0.3, 1.5]).plane.feet).toEqual([0, 1, 2]);
    expect(stands(soles, [0.3, -0.3, 1.5]).plane.feet).toEqual([0, 2, 3]);
  });

  it('[ST6] is judged on the plane with the least to spare where it may rest on either of two', () => {
    const soles = square.map(([x, y, z], index): BodyPoint => [x, y, index === 0 ? z - 0.1 : z]);
    // On pads 0, 1, 2 the plane is z = -(x + 1)/20, on 0, 2, 3 it is z = -(y + 1)/20. Leaning carries the foot point of
    // the middle 55 mm past the line from pad 0 to pad 2, so a center 28 mm to either side of that line may rest on both.
    for (const [center, near, far] of [
      [
        [-0.02, 0.02, 1.5],
        [0, 1, 2],
        [0, 2, 3],
      ],
      [
        [0.02, -0.02, 1.5],
        [0, 2, 3],
        [0, 1, 2],
      ],
    ] as const) {
      const lean = (1.5 + 0.05 * 0.98) / 20 / (1 + 1 / 400);
      expect(spare(soles, near, center)).toBeCloseTo(lean * Math.SQRT1_2 + 0.02 * Math.SQRT2, 3);
      expect(spare(soles, far, center)).toBeCloseTo(lean * Math.SQRT1_2 - 0.02 * Math.SQRT2, 3);
      expect(stands(soles, center).plane.feet).toEqual(far);
    }
  });

  it('[ST6] with a pad sunk in leaves that pad hanging and rests on the others', () => {
    const soles = ring(6, 2).map(([x, y, z], index): BodyPoint => [x, y, index === 1 ? z + 0.2 : z]);
    const stance = stands(soles, [0, 0, 1.5]);
    expect(stance.plane.feet).toEqual([0, 2, 3, 4, 5]);
    expect(stance.lean.angle).toBe(0);
  });

  it('[ST6] has every footpad on or above the plane it rests on', () => {
    const soles = ring(6, 2).map(([x, y, z], index): BodyPoint => [x, y, z + 0.05 * ((index * 7) % 5) - 0.1]);
    const planes = contactPlanes(soles, [0.1, 0.2, 1.5]);
    expect(planes.length).toBeGreaterThan(1);
    for (const plane of planes) {
      const on = soles[plane.feet[0] ?? 0] ?? [0, 0, 0];
      for (const sole of soles) {
        const above = sole.reduce((sum, value, axis) => sum + (value - (on[axis] ?? 0)) * (plane.normal[axis] ?? 0), 0);
        expect(above).toBeGreaterThan(-1e-8);
      }
    }
  });

  it('[ST6] is asked for by the height of the ground under each leg', () => {
    const trivet = LANDERS[0];
    if (trivet === undefined) throw new Error('the example landers are there');
    const flat = landerStance(trivet) as Standing;
    const raised = landerStance(trivet, { rises: [0.2, 0.2, 0.2, 0.2] }) as Standing;
    expect(leastStaticTilt(raised).tilt).toBeLessThan(leastStaticTilt(flat).tilt);
    expect(raised.lean.angle).toBe(0);
    const rock = landerStance(trivet, { rises: [0.2, 0.2, 0, 0] }) as Standing;
    // pads 0 and 1 lie on the +y side, 3.03 m from the others
    expect(rock.lean.angle).toBeCloseTo(Math.atan(0.2 / (2 * 2.14 * Math.SQRT1_2)), 12);
    expect(rock.lean.azimuth).toBeCloseTo(-Math.PI / 2, 12);
    expect(bodyTilt(rock, 5 * DEG, -Math.PI / 2)).toBeCloseTo(rock.lean.angle + 5 * DEG, 12);
    expect(bodyTilt(rock, 5 * DEG, Math.PI / 2)).toBeCloseTo(Math.abs(rock.lean.angle - 5 * DEG), 12);
  });
});
