/**
 * Planes on which a lander can come to rest: through three or more footpads, with every other footpad above it. On even
 * ground with all soles level there is one, the footpad plane. A pad that has sunk in or stands on a rock makes several,
 * and the lander may rock from one to the next.
 *
 * Together they are the lower side of the convex hull of the soles. Every triple of pads is tried (560 for 16 legs): slower
 * than a hull algorithm and without its special cases.
 */
import { add3, cross3, direction3, dot3, scale3, subtract3, type Vec2 } from '../math/index.ts';
import type { BodyPoint } from '../lander/lander.ts';
import { supportPolygon, type SupportEdge } from './supportPolygon.ts';

/** A plane and what stands on it. Points in it are measured from the foot point, along x and y. */
export interface ContactPlane {
  /** Out of the ground, in the body frame. */
  readonly normal: BodyPoint;
  /** The body's x axis laid into the plane, and the direction a quarter turn from it toward body y. Unit vectors. */
  readonly x: BodyPoint;
  readonly y: BodyPoint;
  /** Center of mass above the plane, along the normal [m]. The foot point lies straight below it. */
  readonly height: number;
  /** Footpads on the plane; indices of the soles given. */
  readonly feet: readonly number[];
  /** Of the support polygon, counter-clockwise; from and to are indices of the soles given. */
  readonly edges: readonly SupportEdge[];
}

/**
 * A footpad this near to a plane stands on it [m]. Rounding is ten thousand times smaller; a real pad takes up far more, but
 * how much depends on load and leg, which statics does not know.
 */
const ON_PLANE = 1e-9;

/** Soles and center of mass in the body frame [m]. */
export function contactPlanes(soles: readonly BodyPoint[], center: BodyPoint): readonly ContactPlane[] {
  const planes = new Map<string, ContactPlane>();
  soles.forEach((a, i) => {
    soles.slice(0, i).forEach((b, j) => {
      for (const c of soles.slice(0, j)) {
        const plane = planeThrough([a, b, c], soles, center);
        if (plane !== undefined) planes.set(plane.feet.join(), plane);
      }
    });
  });
  return [...planes.values()];
}

function planeThrough(
  [a, b, c]: readonly [BodyPoint, BodyPoint, BodyPoint],
  soles: readonly BodyPoint[],
  center: BodyPoint,
): ContactPlane | undefined {
  const across = direction3(cross3(subtract3(b, a), subtract3(c, a)));
  // three pads in a line, or a plane on edge
  if (across === undefined || across[2] === 0) return undefined;
  const normal = across[2] > 0 ? across : scale3(across, -1);
  const above = soles.map((sole) => dot3(subtract3(sole, a), normal));
  if (above.some((distance) => distance < -ON_PLANE)) return undefined;

  const x = direction3(subtract3([1, 0, 0], scale3(normal, normal[0])));
  if (x === undefined) return undefined;
  const y = cross3(normal, x);
  const height = dot3(subtract3(center, a), normal);
  const foot = subtract3(center, scale3(normal, height));
  const feet = soles.flatMap((_, index) => ((above[index] ?? Infinity) <= ON_PLANE ? [index] : []));
  const points = feet.map((index): Vec2 => {
    const at = subtract3(soles[index] ?? foot, foot);
    return [dot3(at, x), dot3(at, y)];
  });
  const polygon = supportPolygon(points, [0, 0]);
  if (polygon.kind === 'line') return undefined;
  const edges = polygon.edges.map((edge) => ({ ...edge, from: feet[edge.from] ?? 0, to: feet[edge.to] ?? 0 }));
  return { normal, x, y, height, feet, edges };
}

/** Direction in the plane at an azimuth, as a body vector, from its cosine and sine. */
export function directionIn(plane: ContactPlane, [cosine, sine]: Vec2): BodyPoint {
  return add3(scale3(plane.x, cosine), scale3(plane.y, sine));
}
