/**
 * Support polygon: the convex hull of the footpads in contact, seen square to the contact plane.
 *
 * Hull by monotone chains [Andrew1979]: points sorted by x, then y, then index; lower and upper chain keep left turns only.
 * Chosen because rows of footpads are collinear by design and equal points may occur: both simply do not turn left.
 */
import { atan2, cross2, lengthSquared2, subtract2, type Vec2 } from '../math/index.ts';

export type SupportPolygon =
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
 * A corner turns left by at least this much: twice the area of the triangle, over the square of the points' extent [-].
 * A millionth of a millimeter on a lander's row of feet; rounding is a million times smaller.
 */
const LEAST_TURN = 1e-10;

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

/** Indices of the corners of the convex hull, counter-clockwise from the leftmost, lowest one. */
function convexHull(points: readonly Vec2[]): readonly number[] {
  const order = points
    .map((at, index) => ({ at, index }))
    .toSorted((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1] || a.index - b.index);
  const least = LEAST_TURN * extentSquared(points);
  const lower = chain(order, least);
  const upper = chain(order.toReversed(), least);
  return [...lower.slice(0, -1), ...upper.slice(0, -1)].map((corner) => corner.index);
}

function chain(order: readonly Corner[], least: number): readonly Corner[] {
  const kept: Corner[] = [];
  for (const corner of order) {
    for (;;) {
      const [before, last] = [kept.at(-2), kept.at(-1)];
      if (before === undefined || last === undefined) break;
      if (cross2(subtract2(last.at, before.at), subtract2(corner.at, before.at)) > least) break;
      kept.pop();
    }
    kept.push(corner);
  }
  return kept;
}

function extentSquared(points: readonly Vec2[]): number {
  const xs = points.map((point) => point[0]);
  const ys = points.map((point) => point[1]);
  const width = Math.max(...xs) - Math.min(...xs);
  const depth = Math.max(...ys) - Math.min(...ys);
  return width * width + depth * depth;
}

function pointAt(points: readonly Vec2[], index: number): Vec2 {
  return points[index] ?? [0, 0];
}
