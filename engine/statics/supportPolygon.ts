/**
 * Support polygon: the convex hull of the footpads in contact, seen square to the contact plane.
 *
 * Hull by monotone chains [Andrew1979]: points sorted by x, then y, then index; lower and upper chain keep left turns only.
 * Corners that hardly stand out are dropped afterward: rows of footpads are collinear by design, and rounding makes
 * false corners in the middle of them.
 */
import { atan2, cross2, lengthSquared2, subtract2, type Vec2 } from '../math/index.ts';

type SupportPolygon =
  | {
      readonly kind: 'polygon';
      /** Counter-clockwise, none in the middle of an edge; indices of the points given. */
      readonly corners: readonly number[];
      /** edges[i] runs from corners[i] to the next corner. */
      readonly edges: readonly SupportEdge[];
    }
  /** Fewer than three points, or all in a line. */
  | { readonly kind: 'line' };

export interface SupportEdge {
  /** Indices of the points at its ends, counter-clockwise. */
  readonly from: number;
  readonly to: number;
  /** Direction of its outward normal, from +x toward +y [rad]. */
  readonly normal: number;
  /** From the foot point to the edge's line, along the normal; negative when the foot point lies outside [m]. */
  readonly distance: number;
}

/**
 * A corner stands out from the line between its neighbors by more than this share of the points' extent [-]. Billionths of a
 * meter on a lander; rounding is a million times smaller, so a row of feet stays a row however it is turned.
 */
const LEAST_CORNER = 1e-9;

/** Support polygon of footpads around the foot point of the center of mass, all in one plane [m]. */
export function supportPolygon(points: readonly Vec2[], foot: Vec2): SupportPolygon {
  const corners = convexHull(points);
  if (corners.length < 3) return { kind: 'line' };
  const edges = corners.map((from, index): SupportEdge => {
    const to = corners[(index + 1) % corners.length] ?? from;
    return edgeBetween({ index: from, at: pointAt(points, from) }, { index: to, at: pointAt(points, to) }, foot);
  });
  return { kind: 'polygon', corners, edges };
}

interface Corner {
  readonly index: number;
  readonly at: Vec2;
}

function edgeBetween(from: Corner, to: Corner, foot: Vec2): SupportEdge {
  const along = subtract2(to.at, from.at);
  const length = Math.sqrt(lengthSquared2(along));
  // outward of a counter-clockwise edge: its direction turned clockwise by a quarter
  const normal = atan2(0 - along[0], along[1]);
  const distance = cross2(along, subtract2(foot, from.at)) / length;
  return { from: from.index, to: to.index, normal, distance };
}

/** The corners of the convex hull of some points, counter-clockwise; fewer than three where they lie in a line. */
export function convexOutline(points: readonly Vec2[]): readonly Vec2[] {
  return convexHull(points).map((corner) => pointAt(points, corner));
}

/** Indices of the corners of the convex hull, counter-clockwise. */
function convexHull(points: readonly Vec2[]): readonly number[] {
  const order = points
    .map((at, index) => ({ at, index }))
    .toSorted((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1] || a.index - b.index);
  const around = [...chain(order).slice(0, -1), ...chain(order.toReversed()).slice(0, -1)];
  return withoutFlatCorners(around, LEAST_CORNER * extent(points)).map((corner) => corner.index);
}

function chain(order: readonly Corner[]): readonly Corner[] {
  const kept: Corner[] = [];
  for (const corner of order) {
    for (;;) {
      const [before, last] = [kept.at(-2), kept.at(-1)];
      if (before === undefined || last === undefined) break;
      // no tolerance here: where the chain doubles back, a nearly straight angle is a corner
      if (cross2(subtract2(last.at, before.at), subtract2(corner.at, before.at)) > 0) break;
      kept.pop();
    }
    kept.push(corner);
  }
  return kept;
}

/** Drops, one at a time, the corner that stands out least, until each stands out enough. */
function withoutFlatCorners(around: readonly Corner[], least: number): readonly Corner[] {
  const kept = [...around];
  while (kept.length > 2) {
    const heights = kept.map((corner, index) => standsOut(kept.at(index - 1), corner, kept[(index + 1) % kept.length]));
    const flattest = heights.indexOf(Math.min(...heights));
    if ((heights[flattest] ?? 0) > least) break;
    kept.splice(flattest, 1);
  }
  return kept;
}

/** Distance of a corner from the line between its neighbors [m]. */
function standsOut(before: Corner | undefined, corner: Corner, after: Corner | undefined): number {
  if (before === undefined || after === undefined) return 0;
  const across = subtract2(after.at, before.at);
  const length = Math.sqrt(lengthSquared2(across));
  return length === 0 ? 0 : Math.abs(cross2(subtract2(corner.at, before.at), across)) / length;
}

function extent(points: readonly Vec2[]): number {
  const xs = points.map((point) => point[0]);
  const ys = points.map((point) => point[1]);
  return Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}

function pointAt(points: readonly Vec2[], index: number): Vec2 {
  return points[index] ?? [0, 0];
}
