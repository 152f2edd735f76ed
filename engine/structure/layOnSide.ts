/**
 * The same lander laid on its side.
 *
 * The upright body is turned a quarter about its x axis so that the long axis z becomes the lying y, and the side that was +y
 * faces down: (x, y, z) -> (x, z, top − y), top being the height of the long axis over the new footpad plane. Old heights
 * above the footpad plane so become stations along the lying body. Parts of the kind 'gear' are left out and replaced by the
 * mass of the side legs.
 */
import { assert } from '../assert.ts';
import type { BodyPoint, Lander, Leg, Part, PartShape, Tank } from '../lander/lander.ts';
import { massProperties } from '../lander/index.ts';
import { lastForce, legAnchor, legLength, legMass } from './legMass.ts';

export interface SideLegs {
  /** Places of the pairs of legs along the long axis, as heights of the upright lander [m]; at least two. */
  readonly stations: readonly number[];
  /** From the plane through the long axis to each footpad [m]. */
  readonly halfTrack: number;
  /** Lowest hull point above the footpad plane [m]. */
  readonly clearance: number;
  /** Where the strut meets the body: from the middle plane, and above the footpad plane [m]. */
  readonly hipHalfTrack: number;
  readonly hipHeight: number;
  /** What each leg is made of; default the first leg of the lander, forces shared out so that all legs together bear the same. */
  readonly leg?: Omit<Leg, 'footpad' | 'hip'>;
}

/**
 * Side legs for a first comparison, by proportions that are ours: three pairs at 15, 50 and 85 % of the hull's length, feet
 * 1.6 radii out, belly 0.5 radii up, struts from the flanks at half height. Common practice, no source.
 */
export function suggestSideLegs(lander: Lander): SideLegs {
  const { bottom, top, radius } = hullExtent(lander);
  return {
    stations: [0.15, 0.5, 0.85].map((share) => bottom + share * (top - bottom)),
    halfTrack: 1.6 * radius,
    clearance: 0.5 * radius,
    hipHalfTrack: radius,
    hipHeight: 1.5 * radius,
  };
}

/** Ends of the hull along the long axis, and how far it reaches from that axis [m]. */
export function hullExtent(lander: Lander): { readonly bottom: number; readonly top: number; readonly radius: number } {
  assert(lander.hull.length > 0, 'a lander to be laid on its side has hull points');
  const heights = lander.hull.map((point) => point[2]);
  const reach = lander.hull.map(([x, y]) => Math.sqrt(x * x + y * y));
  return { bottom: Math.min(...heights), top: Math.max(...heights), radius: Math.max(...reach) };
}

export function layOnSide(lander: Lander, sideLegs: SideLegs = suggestSideLegs(lander)): Lander {
  checkSideLegs(lander, sideLegs);
  const axisHeight = sideLegs.clearance + Math.max(...lander.hull.map((point) => point[1]));
  const place = ([x, y, z]: BodyPoint): BodyPoint => [x, z, axisHeight - y];
  const legs = makeLegs(lander, sideLegs);
  const parts = lander.parts.filter(({ kind }) => kind !== 'gear').map((part) => layPart(part, place));
  return {
    ...lander,
    id: `${lander.id}-lying`,
    name: `${lander.name}, lying`,
    summary: `${lander.name} laid on its side, on ${legs.length} side legs.`,
    parts: [...parts, ...legParts(lander, legs)],
    tanks: lander.tanks.map((tank) => layTank(tank, place)),
    legs,
    hull: lander.hull.map(place),
  };
}

function makeLegs(lander: Lander, { stations, halfTrack, hipHalfTrack, hipHeight, leg }: SideLegs): readonly Leg[] {
  const count = 2 * stations.length;
  const made = leg ?? shareForces(lander, count);
  return [1, -1].flatMap((side) =>
    stations.map((at): Leg => ({
      ...made,
      footpad: [side * halfTrack, at, 0],
      hip: [side * hipHalfTrack, at, hipHeight],
    })),
  );
}

/** The first leg of the lander with forces and stiffnesses times (legs before / legs now): together they bear the same. */
function shareForces(lander: Lander, count: number): Omit<Leg, 'footpad' | 'hip'> {
  const first = lander.legs[0];
  assert(first !== undefined, 'a lander has legs');
  const { footpadDiameter, stiffness, stages, bottomedStiffness, secondary } = first;
  const share = lander.legs.length / count;
  return {
    footpadDiameter,
    stiffness: stiffness * share,
    stages: stages.map((stage) => ({ ...stage, force: stage.force * share })),
    bottomedStiffness: bottomedStiffness * share,
    ...(secondary && {
      secondary: { ...secondary, force: secondary.force * share, stiffness: secondary.stiffness * share },
    }),
  };
}

/** A lump half-way up each leg, of the larger mass of the two laws; the anchor is the upright lander's own legs. */
function legParts(lander: Lander, legs: readonly Leg[]): readonly Part[] {
  const anchor = legAnchor(lander, massProperties(lander).mass);
  return legs.map((leg, i): Part => {
    const { strength, buckling } = legMass(anchor, lastForce(leg), legLength(leg));
    const [fx, fy, fz] = leg.footpad;
    const [hx, hy, hz] = leg.hip;
    return {
      name: `side leg ${i + 1}`,
      kind: 'gear',
      mass: Math.max(strength, buckling),
      center: [(fx + hx) / 2, (fy + hy) / 2, (fz + hz) / 2],
      shape: { kind: 'point' },
    };
  });
}

function layPart(part: Part, place: (point: BodyPoint) => BodyPoint): Part {
  return { ...part, center: place(part.center), shape: layShape(part.shape) };
}

/** The old y and z change places. */
function layShape(shape: PartShape): PartShape {
  switch (shape.kind) {
    case 'point':
      return shape;
    case 'cylinder':
    case 'tube':
      return { ...shape, axis: shape.axis === 'z' ? 'y' : 'z' };
    case 'box':
      return { ...shape, size: [shape.size[0], shape.size[2], shape.size[1]] };
    case 'inertia':
      return { ...shape, moments: [shape.moments[0], shape.moments[2], shape.moments[1]] };
  }
  return shape satisfies never;
}

function layTank(tank: Tank, place: (point: BodyPoint) => BodyPoint): Tank {
  const { orientation, radius, length, bottomHeight, offset } = tank;
  const middleHeight = bottomHeight + (orientation === 'upright' ? length / 2 : radius);
  const [x, y, z] = place([offset[0], offset[1], middleHeight]);
  const isLying = orientation === 'upright';
  return {
    ...tank,
    orientation: isLying ? 'lying' : 'upright',
    bottomHeight: z - (isLying ? radius : length / 2),
    offset: [x, y],
  };
}

function checkSideLegs(lander: Lander, { stations, halfTrack, clearance, hipHalfTrack, hipHeight }: SideLegs): void {
  const { bottom, top } = hullExtent(lander);
  assert(new Set(stations).size >= 2, 'side legs stand at two stations at least');
  assert(
    stations.every((at) => at >= bottom && at <= top),
    `side legs stand along the hull, from ${bottom} to ${top} m`,
  );
  assert(halfTrack > 0 && halfTrack < Infinity, 'half track is above 0');
  assert(clearance > 0 && clearance < Infinity, 'clearance is above 0');
  assert(hipHeight > 0 && hipHeight < Infinity, 'hip height is above 0');
  assert(hipHalfTrack >= 0 && hipHalfTrack < Infinity, 'hip half track is 0 or more');
}
