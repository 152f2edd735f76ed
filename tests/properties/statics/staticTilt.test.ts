import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BodyPoint } from '../../../engine/lander/index.ts';
import { tripLimit } from '../../../engine/pivot/index.ts';
import { leastStaticTilt, standOn, staticTilt, supportPolygon, type Stance } from '../../../engine/statics/index.ts';

const PARAMETERS = { seed: 20_0612, numRuns: 400 };

/** Numbers spread evenly; fast-check's own doubles crowd around 0. */
const between = (least: number, most: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((share) => least + ((most - least) * share) / 1_000_000);

const azimuths = between(-Math.PI, Math.PI);
const soles: fc.Arbitrary<readonly BodyPoint[]> = fc.array(fc.tuple(between(-4, 4), between(-4, 4), fc.constant(0)), {
  minLength: 3,
  maxLength: 8,
});
const centers: fc.Arbitrary<BodyPoint> = fc.tuple(between(-1, 1), between(-1, 1), between(0.5, 6));
/** Regular feet, with the center of mass on the axis. */
const regular = fc.record({
  count: fc.integer({ min: 3, max: 12 }),
  radius: between(0.5, 5),
  first: azimuths,
  height: between(0.5, 6),
});

function ring(count: number, radius: number, first: number): readonly BodyPoint[] {
  return Array.from({ length: count }, (_, index): BodyPoint => {
    const azimuth = first + (2 * Math.PI * index) / count;
    return [radius * Math.cos(azimuth), radius * Math.sin(azimuth), 0];
  });
}

function mirror([x, y, z]: BodyPoint): BodyPoint {
  return [x, -y, z];
}

function turned([x, y, z]: BodyPoint, angle: number): BodyPoint {
  return [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle), z];
}

function pointsAt(corners: readonly number[], points: readonly (readonly [number, number])[]) {
  return corners.map((index) => String(points[index])).toSorted();
}

/** Positions from which a millimeter decides whether it stands at all say nothing about tilts. */
function firmly(stance: Stance) {
  return stance.kind === 'stands' && stance.edges.every((edge) => edge.distance > 1e-3) ? stance : undefined;
}

/** Runs a property and asserts that enough of the draws stood. */
function holds(stood: () => number, property: () => void) {
  property();
  expect(stood()).toBeGreaterThan(PARAMETERS.numRuns / 10);
}

describe('static tilt of any footprint', () => {
  it('[ST7] is the same on every world: the trip limit vanishes at it whatever the gravity', () => {
    const gravities = between(0.05, 30);
    fc.assert(
      fc.property(regular, gravities, ({ count, radius, first, height }, gravity) => {
        const stance = standOn(ring(count, radius, first), [0, 0, height]);
        if (stance.kind !== 'stands') throw new Error(stance.reason);
        const { tilt, edge } = leastStaticTilt(stance);
        const body = { mass: 1, halfStance: edge.distance, centerHeight: height, inertia: 0 };
        const steep = tripLimit(body, { gravity, slope: tilt * (1 + 1e-9) });
        expect(steep).toEqual({ kind: 'cannotStand', staticTilt: expect.closeTo(tilt, 12) });
        expect(tripLimit(body, { gravity, slope: tilt * (1 - 1e-9) }).kind).toBe('limit');
      }),
      PARAMETERS,
    );
  });

  it('[ST7] is mirrored when the lander is mirrored', () => {
    let stood = 0;
    holds(
      () => stood,
      () =>
        fc.assert(
          fc.property(soles, centers, azimuths, (points, center, azimuth) => {
            const stance = firmly(standOn(points, center));
            if (stance === undefined) return;
            stood++;
            const mirrored = firmly(standOn(points.map(mirror), mirror(center)));
            if (mirrored === undefined) throw new Error('the mirror image stands');
            expect(staticTilt(mirrored, -azimuth)).toBeCloseTo(staticTilt(stance, azimuth), 9);
          }),
          PARAMETERS,
        ),
    );
  });

  it('[ST7] turns with the lander', () => {
    let stood = 0;
    holds(
      () => stood,
      () =>
        fc.assert(
          fc.property(soles, centers, azimuths, azimuths, (points, center, azimuth, angle) => {
            const stance = firmly(standOn(points, center));
            if (stance === undefined) return;
            stood++;
            const yawed = firmly(
              standOn(
                points.map((point) => turned(point, angle)),
                turned(center, angle),
              ),
            );
            if (yawed === undefined) throw new Error('the turned lander stands');
            expect(staticTilt(yawed, azimuth + angle)).toBeCloseTo(staticTilt(stance, azimuth), 9);
          }),
          PARAMETERS,
        ),
    );
  });

  it('[ST7] of n equal legs is unchanged by a yaw of 360/n degrees, and is atan(R cos(pi/n) / h) at least', () => {
    fc.assert(
      fc.property(regular, azimuths, ({ count, radius, first, height }, azimuth) => {
        const stance = standOn(ring(count, radius, first), [0, 0, height]);
        if (stance.kind !== 'stands') throw new Error(stance.reason);
        const step = (2 * Math.PI) / count;
        expect(staticTilt(stance, azimuth + step)).toBeCloseTo(staticTilt(stance, azimuth), 9);
        const least = Math.atan((radius * Math.cos(step / 2)) / height);
        expect(leastStaticTilt(stance).tilt).toBeCloseTo(least, 12);
      }),
      PARAMETERS,
    );
  });

  it('[ST7] is nowhere below its least value, and reaches it', () => {
    let stood = 0;
    holds(
      () => stood,
      () =>
        fc.assert(
          fc.property(soles, centers, azimuths, (points, center, azimuth) => {
            const stance = firmly(standOn(points, center));
            if (stance === undefined) return;
            stood++;
            const least = leastStaticTilt(stance);
            expect(staticTilt(stance, azimuth)).toBeGreaterThanOrEqual(least.tilt * (1 - 1e-12));
            expect(staticTilt(stance, least.azimuth)).toBeCloseTo(least.tilt, 12);
          }),
          PARAMETERS,
        ),
    );
  });

  it('[ST5] is never improved by the loss of a leg, toward any azimuth', () => {
    let stood = 0;
    holds(
      () => stood,
      () =>
        fc.assert(
          fc.property(soles, centers, azimuths, fc.nat(), (points, center, azimuth, leg) => {
            const whole = standOn(points, center);
            const left = points.filter((_, index) => index !== leg % points.length);
            const maimed = standOn(left, center);
            if (maimed.kind !== 'stands') return;
            stood++;
            if (whole.kind !== 'stands') throw new Error('with all its legs it stands all the more');
            expect(staticTilt(maimed, azimuth)).toBeLessThanOrEqual(staticTilt(whole, azimuth) * (1 + 1e-9));
            expect(leastStaticTilt(maimed).tilt).toBeLessThanOrEqual(leastStaticTilt(whole).tilt * (1 + 1e-9));
          }),
          { ...PARAMETERS, numRuns: 1000 },
        ),
    );
  });
});

describe('support polygon of any points', () => {
  it('[ST1] holds every point on or inside all edges, and does not depend on their order', () => {
    let polygons = 0;
    fc.assert(
      fc.property(soles, fc.array(fc.nat(), { minLength: 8, maxLength: 8 }), (points, keys) => {
        const plane = points.map(([x, y]) => [x, y] as const);
        const shuffled = plane
          .map((point, index) => ({ point, key: keys[index] ?? 0 }))
          .toSorted((a, b) => a.key - b.key)
          .map(({ point }) => point);
        const polygon = supportPolygon(plane, [0, 0]);
        const again = supportPolygon(shuffled, [0, 0]);
        expect(again.kind).toBe(polygon.kind);
        if (polygon.kind !== 'polygon' || again.kind !== 'polygon') return;
        polygons++;
        expect(pointsAt(again.corners, shuffled)).toEqual(pointsAt(polygon.corners, plane));
        for (const point of plane) {
          const around = supportPolygon(plane, point);
          if (around.kind !== 'polygon') throw new Error('the same points');
          for (const edge of around.edges) expect(edge.distance).toBeGreaterThan(-1e-8);
        }
      }),
      PARAMETERS,
    );
    expect(polygons).toBeGreaterThan(200);
  });
});
