/**
 * Static tilt: how far the ground may be tilted under a lander that stands before it falls. No gravity enters.
 *
 *   tan θ(ψ) = ρ(ψ) / h,   ρ(ψ) = min over the edges facing ψ of  d / cos(ψ − ν)         geometry
 *
 * θ  static tilt [rad]      ψ  azimuth toward which the ground is tilted [rad]
 * ρ  from the foot point to the polygon's edge along ψ [m]        h  center of mass above the contact plane [m]
 * d  from the foot point to an edge [m]                           ν  azimuth of the edge's outward normal [rad]
 *
 * ρ and the foot point lie in the contact plane, h stands square on it. tan θ across an edge is the static stability
 * factor of road vehicles [NHTSA2001]. Least where ψ is the normal of the nearest edge. On a pad that has sunk in or
 * stands on a rock, each edge is measured in the plane from which the lander tips over it.
 */
import { atan2, cos, hypot2, scale3, sin, subtract3 } from '../math/index.ts';
import { directionIn } from './contactPlanes.ts';
import type { Standing, TipEdge } from './stance.ts';

/** Static tilt toward an azimuth [rad]. */
export function staticTilt(stance: Standing, azimuth: number): number {
  return Math.min(...stance.edges.map((edge) => tiltOver(edge, azimuth)));
}

/** π/2 for an edge that faces away: it is never tipped over. */
function tiltOver(edge: TipEdge, azimuth: number): number {
  const facing = cos(azimuth - edge.normal);
  return facing > 0 ? atan2(edge.distance, edge.height * facing) : Math.PI / 2;
}

interface LeastTilt {
  /** [rad] */
  readonly tilt: number;
  /** Azimuth at which it is reached [rad]; of equal ones, the first from −π on. */
  readonly azimuth: number;
  readonly edge: TipEdge;
}

/** Static tilts that differ by less than this share belong to edges that are equal by design [-]; rounding leaves 1e-15. */
const ALIKE = 1e-12;

/** The least static tilt over all azimuths, exactly: it lies at the normal of an edge. */
export function leastStaticTilt(stance: Standing): LeastTilt {
  return stance.edges
    .map((edge): LeastTilt => ({ tilt: atan2(edge.distance, edge.height), azimuth: edge.normal, edge }))
    .toSorted((a, b) => a.azimuth - b.azimuth)
    .reduce((least, other) => (other.tilt < least.tilt * (1 - ALIKE) ? other : least));
}

/** Tilt left when the ground falls at a slope toward an azimuth [rad]; negative where the lander falls. */
export function slopeMargin(stance: Standing, slope: number, fallAzimuth: number): number {
  return staticTilt(stance, fallAzimuth) - slope;
}

/** Angle between the body's z axis and the vertical, for a lander that stands on a slope [rad]. */
export function bodyTilt({ plane }: Standing, slope: number, fallAzimuth: number): number {
  const fall = directionIn(plane, [cos(fallAzimuth), sin(fallAzimuth)]);
  // the vertical, in the body frame
  const up = subtract3(scale3(plane.normal, cos(slope)), scale3(fall, sin(slope)));
  return atan2(hypot2(up[0], up[1]), up[2]);
}
