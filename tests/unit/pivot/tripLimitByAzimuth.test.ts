import { describe, expect, it } from 'vitest';
import {
  massProperties,
  type BodyPoint,
  type InertiaTensor,
  type MassProperties,
} from '../../../engine/lander/index.ts';
import {
  pivotBodyOver,
  tripLimit,
  tripLimitByAzimuth,
  tripLimitToward,
  type AzimuthTrip,
  type TravelCondition,
} from '../../../engine/pivot/index.ts';
import { landerStance, standOn, type Standing, type TipEdge } from '../../../engine/statics/index.ts';
import { LANDERS } from '../../../levels/index.ts';

const DEG = Math.PI / 180;
const MOON = 1.62422;

function standing(soles: readonly BodyPoint[], center: BodyPoint): Standing {
  const stance = standOn(soles, center);
  if (stance.kind !== 'stands') throw new Error(stance.reason);
  return stance;
}

function limitsOf(point: AzimuthTrip) {
  if (point.kind !== 'limit') throw new Error('it stands');
  return point;
}

/** A lopsided body on five feet, with products of inertia. */
const feet: readonly BodyPoint[] = [
  [2, 0.3, 0],
  [0.7, 1.9, 0],
  [-1.6, 1.4, 0],
  [-1.8, -1.1, 0],
  [0.9, -1.7, 0],
];
const inertia: InertiaTensor = { xx: 1500, yy: 2100, zz: 1300, xy: 200, xz: -250, yz: 150 };
const bulk: MassProperties = { mass: 1000, center: [0.15, -0.1, 1.8], inertia };
const stance = standing(feet, bulk.center);

type Vector = readonly [number, number, number];
const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k];
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vector) => times(a, 1 / Math.sqrt(dot(a, a)));
const applied = (v: Vector): Vector => [
  inertia.xx * v[0] + inertia.xy * v[1] + inertia.xz * v[2],
  inertia.xy * v[0] + inertia.yy * v[1] + inertia.yz * v[2],
  inertia.xz * v[0] + inertia.yz * v[1] + inertia.zz * v[2],
];

/** Whether a contact turns the body over an edge: angular momentum and climb from vectors, in no section. */
function fallsOver(edge: TipEdge, condition: TravelCondition, azimuth: number, horizontal: number) {
  const { gravity, slope, descentRate = 0, rate = 0 } = condition;
  const fall = condition.fallAzimuth ?? azimuth;
  // the vertical, as the body standing on the slope sees it
  const up: Vector = [-Math.sin(slope) * Math.cos(fall), -Math.sin(slope) * Math.sin(fall), Math.cos(slope)];
  const along: Vector = [Math.cos(azimuth), Math.sin(azimuth), 0];
  const level = unit(plus(along, times(up, -dot(along, up))));
  const velocity = plus(times(level, horizontal), times(up, -descentRate));
  const from = feet[edge.from] ?? [0, 0, 0];
  const to = feet[edge.to] ?? [0, 0, 0];
  const axis = unit(plus(to, times(from, -1)));
  const arm = plus(bulk.center, times(from, -1));
  const turn: Vector = times([-Math.sin(azimuth), Math.cos(azimuth), 0], rate);
  const momentum = dot(axis, plus(times(cross(arm, velocity), bulk.mass), applied(turn)));
  const across = plus(arm, times(axis, -dot(arm, axis)));
  const pivotInertia = dot(axis, applied(axis)) + bulk.mass * dot(across, across);
  // on its circle about the edge the center is highest where it lies along the vertical's part across the edge
  const rise = plus(up, times(axis, -dot(up, axis)));
  const climb = Math.sqrt(dot(across, across) * dot(rise, rise)) - dot(across, up);
  const energy = (0.5 * momentum * momentum) / pivotInertia;
  return { falls: momentum > 0 && energy >= bulk.mass * gravity * climb, closing: -velocity[2] };
}

/** Speed across an edge, without any turn, and that which holds the energy to climb over it, from vectors. */
function acrossEdge(
  edge: TipEdge,
  { gravity, slope, fallAzimuth = 0, descentRate = 0 }: TravelCondition,
  azimuth: number,
  horizontal: number,
) {
  const up: Vector = [
    -Math.sin(slope) * Math.cos(fallAzimuth),
    -Math.sin(slope) * Math.sin(fallAzimuth),
    Math.cos(slope),
  ];
  const along: Vector = [Math.cos(azimuth), Math.sin(azimuth), 0];
  const level = unit(plus(along, times(up, -dot(along, up))));
  const velocity = plus(times(level, horizontal), times(up, -descentRate));
  const from = feet[edge.from] ?? [0, 0, 0];
  const axis = unit(plus(feet[edge.to] ?? [0, 0, 0], times(from, -1)));
  const arm = plus(bulk.center, times(from, -1));
  const square = (vector: Vector): Vector => plus(vector, times(axis, -dot(vector, axis)));
  const [across, rise, moving] = [square(arm), square(up), square(velocity)];
  const climb = Math.sqrt(dot(across, across) * dot(rise, rise)) - dot(across, up);
  return { speed: Math.sqrt(dot(moving, moving)), needed: Math.sqrt(2 * gravity * climb), closing: -velocity[2] };
}

const travels: readonly TravelCondition[] = [
  { gravity: MOON, slope: 0, descentRate: 0 },
  { gravity: MOON, slope: 0, descentRate: 1 },
  { gravity: 3.72787, slope: 7 * DEG, descentRate: 1.5 },
  { gravity: 9.80665, slope: -6 * DEG, descentRate: 2, rate: 0.2 },
  { gravity: MOON, slope: 9 * DEG, fallAzimuth: 2, descentRate: 1.2 },
  { gravity: MOON, slope: 5 * DEG, fallAzimuth: -1, descentRate: 2, rate: -0.15 },
];

describe('trip limit by azimuth', () => {
  it.each(travels)('[TR11] parts the states that turn over an edge from those that do not: %j', (travel) => {
    // the vectors are those of a leading foot that catches
    const condition = { ...travel, firstContact: 'leading' } as const;
    let checked = 0;
    for (let azimuth = -3; azimuth < 3.2; azimuth += 0.37) {
      const { plastic } = limitsOf(tripLimitToward(stance, bulk, condition, azimuth));
      const facing = stance.edges.filter((edge) => Math.cos(azimuth - edge.normal) > 0);
      const outcome = (speed: number) => facing.map((edge) => fallsOver(edge, condition, azimuth, speed));
      // with the body leaving the ground there is no such contact, and the limit is that of sliding
      if ((outcome(plastic.horizontal)[0]?.closing ?? -1) < -1e-12) continue;
      checked++;
      expect(outcome(plastic.horizontal * (1 + 1e-9)).some(({ falls }) => falls)).toBe(true);
      expect(outcome(plastic.horizontal * (1 - 1e-9)).some(({ falls }) => falls)).toBe(false);
    }
    expect(checked).toBeGreaterThan(10);
  });

  it('[TR11] names the edge that sets the limit', () => {
    for (const edge of stance.edges) {
      const { plastic } = limitsOf(tripLimitToward(stance, bulk, { gravity: MOON, slope: 0 }, edge.normal));
      expect(fallsOver(edge, { gravity: MOON, slope: 0 }, edge.normal, plastic.horizontal * (1 + 1e-9)).falls).toBe(
        true,
      );
      expect([plastic.from, plastic.to]).toEqual([edge.from, edge.to]);
    }
  });

  it('[TR11] equals the limit in the section when travel and fall line run square to an edge', () => {
    for (const edge of stance.edges) {
      const body = pivotBodyOver(edge, stance, bulk);
      for (const firstContact of ['leading', 'trailing'] as const) {
        for (const ground of [{}, { descentRate: 0.4 }, { descentRate: 0.01 }, { descentRate: 1, rate: 0.1 }]) {
          const condition = { gravity: MOON, slope: 6 * DEG, firstContact, ...ground };
          const section = tripLimit(body, condition);
          if (section.kind !== 'limit') throw new Error('it stands');
          const around = limitsOf(tripLimitToward(stance, bulk, condition, edge.normal));
          expect(around.plastic.horizontal).toBeLessThanOrEqual(section.plastic.horizontal + 1e-12);
          expect([around.plastic.from, around.plastic.to]).toEqual([edge.from, edge.to]);
          expect(around.plastic.alongGround).toBeCloseTo(section.plastic.alongGround, 12);
          expect(around.plastic.horizontal).toBeCloseTo(section.plastic.horizontal, 12);
          expect(around.lossless?.horizontal).toBeCloseTo(section.lossless?.horizontal ?? Number.NaN, 12);
        }
      }
    }
  });

  it('[TR11] counts only the component across the edge: on level ground it goes with 1 / cos', () => {
    const square = standing(
      [
        [1.5, 1.5, 0],
        [-1.5, 1.5, 0],
        [-1.5, -1.5, 0],
        [1.5, -1.5, 0],
      ],
      [0, 0, 2],
    );
    const round = {
      mass: 1000,
      center: [0, 0, 2],
      inertia: { xx: 1500, yy: 1500, zz: 900, xy: 0, xz: 0, yz: 0 },
    } as const;
    const straight = limitsOf(tripLimitToward(square, round, { gravity: MOON, slope: 0 }, 0));
    expect(straight.plastic.horizontal).toBeCloseTo(1.7739578, 6);
    for (const azimuth of [10, 25, 40, 44.9]) {
      const oblique = limitsOf(tripLimitToward(square, round, { gravity: MOON, slope: 0 }, azimuth * DEG));
      const expected = straight.plastic.horizontal / Math.cos(azimuth * DEG);
      expect(oblique.plastic.horizontal).toBeCloseTo(expected, 12);
      expect(oblique.lossless?.horizontal).toBeCloseTo(
        (straight.lossless?.horizontal ?? 0) / Math.cos(azimuth * DEG),
        12,
      );
      expect(oblique.criticalFriction).toBeCloseTo(0.75 / Math.cos(azimuth * DEG), 12);
    }
  });

  it('[TR11] has its least value at an edge normal on level ground', () => {
    const { least, points } = tripLimitByAzimuth(stance, bulk, { gravity: MOON, slope: 0 });
    if (least.kind !== 'limit') throw new Error('it stands');
    expect(stance.edges.map((edge) => edge.normal)).toContain(least.plastic.azimuth);
    expect(points).toHaveLength(360);
    for (const point of points)
      expect(limitsOf(point).plastic.horizontal).toBeGreaterThanOrEqual(least.plastic.horizontal);
  });

  it('[TR11] has the least critical friction over the edge nearest to the foot point: its distance over the height', () => {
    const corners: readonly BodyPoint[] = [
      [1.5, 1, 0],
      [-1.5, 1, 0],
      [-1.5, -1, 0],
      [1.5, -1, 0],
    ];
    // 0.9 m to the edge at y = -1, 1.1 to that at y = 1, 1.3 and 1.7 to the others
    const box: MassProperties = { ...bulk, center: [0.2, -0.1, 2] };
    const { least, points } = tripLimitByAzimuth(standing(corners, box.center), box, { gravity: MOON, slope: 0 }, 8);
    expect(least).toMatchObject({ kind: 'limit', criticalFriction: expect.closeTo(0.9 / 2, 12) });
    const toward = [0, 2, 4, 6].map((eighth) => limitsOf(points[eighth] ?? points[0]!).criticalFriction);
    for (const [index, distance] of [1.3, 1.1, 1.7, 0.9].entries()) expect(toward[index]).toBeCloseTo(distance / 2, 12);
  });

  it('[TR2] has a lossless bound at which the motion across the edge just holds the climb, on a slope that lies across', () => {
    const condition: TravelCondition = { gravity: MOON, slope: 9 * DEG, fallAzimuth: 2, descentRate: 0.5 };
    let checked = 0;
    for (let azimuth = -3; azimuth < 3.2; azimuth += 0.37) {
      const { lossless } = limitsOf(tripLimitToward(stance, bulk, condition, azimuth));
      const edge = stance.edges.find(({ from }) => from === lossless?.from);
      if (lossless === undefined || edge === undefined) continue;
      const { speed, needed, closing } = acrossEdge(edge, condition, azimuth, lossless.horizontal);
      if (closing < 0) continue;
      checked++;
      expect(speed / needed).toBeCloseTo(1, 10);
    }
    expect(checked).toBeGreaterThan(8);
  });

  it('[TR2] has the least lossless bound over its azimuths, at an edge normal on level ground', () => {
    const { least, points } = tripLimitByAzimuth(stance, bulk, { gravity: MOON, slope: 0 });
    if (least.kind !== 'limit') throw new Error('it stands');
    // the edge with the lowest climb sqrt(b^2 + h^2) - h is the nearest one: all edges of level feet have one height
    const nearest = stance.edges.reduce((a, b) => (b.distance < a.distance ? b : a));
    expect(least.lossless).toMatchObject({ from: nearest.from, to: nearest.to, azimuth: nearest.normal });
    const climb = Math.hypot(nearest.distance, nearest.height) - nearest.height;
    expect(least.lossless?.horizontal).toBeCloseTo(Math.sqrt(2 * MOON * climb), 12);
    const bounds = points.map((point) => limitsOf(point).lossless?.horizontal ?? Number.NaN);
    expect(Math.min(...bounds)).toBeGreaterThanOrEqual(least.lossless?.horizontal ?? Number.NaN);
  });

  it('[TR2] has no least lossless bound when descent alone carries the energy to fall toward some azimuth', () => {
    const seen = new Set<string>();
    for (let descentRate = 0.2; descentRate < 4; descentRate += 0.2) {
      const condition = { gravity: MOON, slope: 6 * DEG, fallAzimuth: 0.4, descentRate };
      const { least, points } = tripLimitByAzimuth(stance, bulk, condition);
      if (least.kind !== 'limit') throw new Error('it stands');
      const without = points.filter((point) => limitsOf(point).lossless === undefined).length;
      seen.add(without === 0 ? 'none' : without === points.length ? 'all' : 'some');
      expect(least.lossless === undefined, `${descentRate} m/s`).toBe(without > 0);
    }
    expect([...seen].toSorted()).toEqual(['all', 'none', 'some']);
  });

  it('[TR11] on a slope that lies still is lower downhill than uphill', () => {
    const condition = { gravity: MOON, slope: 8 * DEG, fallAzimuth: 0 };
    const down = limitsOf(tripLimitToward(stance, bulk, condition, 0)).plastic.horizontal;
    const level = limitsOf(tripLimitToward(stance, bulk, { gravity: MOON, slope: 0 }, 0)).plastic.horizontal;
    const up = limitsOf(tripLimitToward(stance, bulk, { ...condition, fallAzimuth: Math.PI }, 0)).plastic.horizontal;
    expect(down).toBeLessThan(level);
    expect(up).toBeGreaterThan(level);
  });

  it('[TR11] on a slope that lies still finds its least value within 1 - cos(half a step)', () => {
    const condition = { gravity: MOON, slope: 10 * DEG, fallAzimuth: 0.5, descentRate: 1.5 };
    const coarse = tripLimitByAzimuth(stance, bulk, condition).least;
    const fine = tripLimitByAzimuth(stance, bulk, condition, 7200).least;
    if (coarse.kind !== 'limit' || fine.kind !== 'limit') throw new Error('it stands');
    const excess = coarse.plastic.horizontal / fine.plastic.horizontal - 1;
    expect(excess).toBeGreaterThanOrEqual(0);
    expect(excess).toBeLessThan(4e-5);
  });

  it('[TR7] cannot stand where the slope reaches the static tilt, and says toward where', () => {
    const [, , bolster] = LANDERS;
    if (bolster === undefined) throw new Error('the example landers are there');
    const long = landerStance(bolster);
    if (long.kind !== 'stands') throw new Error(long.reason);
    const properties = massProperties(bolster);
    // along its length it stands at 55 degrees, across it does not
    const condition = { gravity: MOON, slope: 55 * DEG };
    expect(tripLimitToward(long, properties, condition, 90 * DEG).kind).toBe('limit');
    expect(tripLimitToward(long, properties, condition, 0).kind).toBe('cannotStand');
    const { least } = tripLimitByAzimuth(long, properties, condition);
    expect(least).toMatchObject({ kind: 'cannotStand', azimuth: 0, staticTilt: expect.closeTo(49.2563 * DEG, 5) });
  });

  it('[TR8] is negative all round, and modest, when it would fall at no horizontal speed', () => {
    const condition: TravelCondition = { gravity: 0.2, slope: 0, descentRate: 6, firstContact: 'trailing' };
    const { points } = tripLimitByAzimuth(stance, bulk, condition, 36);
    for (const point of points) {
      const { plastic, lossless } = limitsOf(point);
      expect(plastic.horizontal).toBeLessThan(0);
      expect(plastic.horizontal).toBeGreaterThan(-20);
      expect(lossless).toBeUndefined();
    }
  });
});
