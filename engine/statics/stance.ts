import { assert } from '../assert.ts';
import { atan2, cos, hypot2, sin, tan } from '../math/index.ts';
import type { BodyPoint, Lander } from '../lander/lander.ts';
import { massProperties, type MassProperties } from '../lander/massProperties.ts';
import { contactPlanes, directionIn, type ContactPlane } from './contactPlanes.ts';

/**
 * How a lander stands on its footpads.
 *
 * All lengths and azimuths are measured in the contact plane: heights along its normal, azimuths from the body's x axis laid
 * into the plane, toward y. On even ground that is the footpad plane and the body's own azimuths.
 */
export type Stance = Standing | CannotStand;

export interface Standing {
  readonly kind: 'stands';
  readonly plane: ContactPlane;
  /** Edges over which it falls. A turn over any other edge of a plane only rocks it onto the next footpad. */
  readonly edges: readonly TipEdge[];
  /** How far the body leans from the normal of the ground, and to which side. 0 on even ground. */
  readonly lean: { readonly angle: number; readonly azimuth: number };
}

interface CannotStand {
  readonly kind: 'cannotStand';
  readonly reason: 'fewer than three footpads off a line' | 'center of mass outside the footprint';
}

export interface TipEdge {
  /** Legs at its ends, counter-clockwise seen from above. */
  readonly from: number;
  readonly to: number;
  /** Direction of its outward normal [rad]. */
  readonly normal: number;
  /** Foot point of the center of mass to the edge [m]. */
  readonly distance: number;
  /** Center of mass above the plane from which it tips over this edge [m]. */
  readonly height: number;
  /** Along the edge, in the body frame: the body turns about it, right-handed, when it tips. */
  readonly axis: BodyPoint;
}

/** Where a lander stands, and what is wrong with it. */
export interface Footing {
  /** Filled fraction of each tank [-]. Default: as in the lander. */
  readonly fills?: readonly number[];
  /** Legs that are gone, by index. */
  readonly missing?: readonly number[];
  /** How much higher the ground is under each leg than the ground plane: + on a rock, − sunk in [m]. Default 0. */
  readonly rises?: readonly number[];
  /** Slope of the ground plane [rad], and the azimuth toward which it falls. Default 0: level. */
  readonly slope?: number;
  readonly fallAzimuth?: number;
}

/**
 * The plumb line passes at least so far inside the footprint [m]; nearer than this is balanced on an edge. A thousand times
 * the rounding of positions, a thousandth of anything that could be built or measured.
 */
const LEAST_LEFT = 1e-9;

/** How a lander stands on its footpads, taken as rigid. */
export function landerStance(lander: Lander, footing: Footing = {}): Stance {
  const { fills, missing = [], rises = [] } = footing;
  assert(
    missing.every((leg) => lander.legs[leg] !== undefined),
    'missing legs are legs of the lander',
  );
  assert(rises.length === 0 || rises.length === lander.legs.length, 'rises names one height for each leg');
  const legs = lander.legs.flatMap((leg, index) => (missing.includes(index) ? [] : [{ leg, index }]));
  const soles = legs.map(({ leg, index }): BodyPoint => {
    const [x, y, z] = leg.footpad;
    return [x, y, z - (rises[index] ?? 0)];
  });
  const bulk: MassProperties = massProperties(lander, fills);
  const stance = standOn(soles, bulk.center, footing);
  if (stance.kind === 'cannotStand') return stance;
  // back from indices of the legs that are there to those of the lander
  const legAt = (index: number) => legs[index]?.index ?? index;
  const renumber = <Edge extends { from: number; to: number }>(edge: Edge) => ({
    ...edge,
    from: legAt(edge.from),
    to: legAt(edge.to),
  });
  const { plane } = stance;
  return {
    ...stance,
    plane: { ...plane, feet: plane.feet.map(legAt), edges: plane.edges.map(renumber) },
    edges: stance.edges.map(renumber),
  };
}

/** The same for bare soles and a center of mass, in the body frame [m]. */
export function standOn(
  soles: readonly BodyPoint[],
  center: BodyPoint,
  ground: Pick<Footing, 'slope' | 'fallAzimuth'> = {},
): Stance {
  const { slope = 0, fallAzimuth = 0 } = ground;
  assert(slope >= 0 && slope < Math.PI / 2, 'slope lies from 0 to below 90 degrees');
  const planes = contactPlanes(soles, center);
  if (planes.length === 0) return { kind: 'cannotStand', reason: 'fewer than three footpads off a line' };
  // on a slope the plumb line meets the plane downhill of the foot point
  const plumb = (plane: ContactPlane) => plane.height * tan(slope);
  const leastLeft = (plane: ContactPlane) =>
    Math.min(...plane.edges.map((edge) => edge.distance - plumb(plane) * cos(fallAzimuth - edge.normal)));
  const carrying = planes.filter((plane) => plane.height > 0 && leastLeft(plane) > LEAST_LEFT);
  const [first, ...others] = carrying;
  if (first === undefined) return { kind: 'cannotStand', reason: 'center of mass outside the footprint' };
  // where it may rest on more than one, the one with the least to spare is given
  const plane = others.reduce((least, other) => (leastLeft(other) < leastLeft(least) ? other : least), first);
  return { kind: 'stands', plane, edges: outerEdges(planes), lean: leanOf(plane) };
}

/** Edges that belong to one plane only. */
function outerEdges(planes: readonly ContactPlane[]): readonly TipEdge[] {
  const all = planes.flatMap((plane) => plane.edges.map((edge) => ({ plane, edge })));
  return all
    .filter(({ edge }) => !all.some(({ edge: other }) => other.from === edge.to && other.to === edge.from))
    .map(({ plane, edge }) => ({
      ...edge,
      height: plane.height,
      axis: directionIn(plane, [0 - sin(edge.normal), cos(edge.normal)]),
    }));
}

function leanOf({ normal, x, y }: ContactPlane): Standing['lean'] {
  // body z seen in the plane: its components along x, y and the normal
  const across = hypot2(x[2], y[2]);
  return { angle: atan2(across, normal[2]), azimuth: across === 0 ? 0 : atan2(y[2], x[2]) };
}
