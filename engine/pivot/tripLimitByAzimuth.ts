/**
 * Trip limit of a lander that stands on a polygon of footpads, as a function of the azimuth in which it travels.
 *
 * It may turn over any edge that it approaches. What counts, for each edge, are the components in the plane square to it
 * (u toward the edge in the ground, n out of the ground). With the ground falling at σ toward azimuth f, δ = ν − f,
 * β = θ − f for an edge of normal ν and travel at θ, t̂ the direction of travel along the ground:
 *
 *   gravity in the section   g √(cos²σ + sin²σ cos²δ),   slope in it   tan φ = tan σ cos δ
 *   travel falls at τ:   sin τ = sin σ cos β,   t̂ = cos τ ĥ − sin τ ẑ,   ẑ = cos σ n − sin σ f̂
 *   v = v_h ĥ − v_v ẑ = (v_h / cos τ) t̂ + (v_h tan τ − v_v) ẑ, so that
 *   v_t = v_h cos(θ − ν) / cos τ + (v_v − v_h tan τ) sin σ cos δ,     w = (v_v − v_h tan τ) cos σ
 *
 * Moments of inertia are taken about each edge from the full tensor. The first of the edges to be tripped over sets the
 * limit; after the pivot in edgePivot.ts, which both feet of an edge share.
 */
import { inertiaAlong, applyInertia } from '../lander/inertiaTensor.ts';
import type { MassProperties } from '../lander/massProperties.ts';
import { asin, atan2, cos, dot3, scale3, sin, tan } from '../math/index.ts';
import { directionIn } from '../statics/contactPlanes.ts';
import type { Standing, TipEdge } from '../statics/stance.ts';
import { staticTilt } from '../statics/staticTilt.ts';
import { losslessEdgeLimit, plasticEdgeLimit, type EdgeSection } from './edgePivot.ts';
import { assertCondition, speedLimit, type ContactCondition, type SpeedLimit } from './tripLimit.ts';

/**
 * The state at contact. Azimuths are those of the stance, in the contact plane. `rate` turns the body toward the direction
 * of travel; 'leading' and 'trailing' are as seen in it.
 */
export interface TravelCondition extends ContactCondition {
  /** Azimuth toward which the ground falls [rad]. Omitted: `slope` is the fall in the direction of travel, whatever it is. */
  readonly fallAzimuth?: number;
}

/** A limit and the edge, between two legs, that sets it. */
interface EdgeSpeedLimit extends SpeedLimit {
  readonly from: number;
  readonly to: number;
}

export type AzimuthTrip = { readonly azimuth: number } & (
  | {
      readonly kind: 'limit';
      readonly plastic: EdgeSpeedLimit;
      /** undefined when descent and rotation alone carry the energy to fall over an edge that it approaches. */
      readonly lossless: EdgeSpeedLimit | undefined;
      /** As in tripLimit, for sliding in this direction [-]. */
      readonly criticalFriction: number;
    }
  | { readonly kind: 'cannotStand'; readonly staticTilt: number }
);

export type LeastTrip =
  | {
      readonly kind: 'limit';
      readonly plastic: EdgeSpeedLimit & { readonly azimuth: number };
      /** undefined when it is so for any azimuth. */
      readonly lossless: (EdgeSpeedLimit & { readonly azimuth: number }) | undefined;
      readonly criticalFriction: number;
    }
  | { readonly kind: 'cannotStand'; readonly azimuth: number; readonly staticTilt: number };

interface TripCurve {
  /** In order of azimuth, from 0. */
  readonly points: readonly AzimuthTrip[];
  readonly least: LeastTrip;
}

/**
 * The curve at equal steps of azimuth, and the least horizontal limits over those azimuths and the edge normals. The least
 * lies at an edge normal, and so is exact, on level ground and where the slope goes with the travel; on a slope that lies
 * still it is off by less than 1 − cos(half a step), 4e-5 of the limit at the default.
 */
export function tripLimitByAzimuth(
  stance: Standing,
  bulk: MassProperties,
  condition: TravelCondition,
  steps = 360,
): TripCurve {
  const points = Array.from({ length: steps }, (_, index) =>
    tripLimitToward(stance, bulk, condition, (2 * Math.PI * index) / steps),
  );
  const atNormals = stance.edges.map((edge) => tripLimitToward(stance, bulk, condition, edge.normal));
  return { points, least: leastTrip([...atNormals, ...points]) };
}

/** Trip limit of travel toward one azimuth [rad]. */
export function tripLimitToward(
  stance: Standing,
  bulk: MassProperties,
  condition: TravelCondition,
  azimuth: number,
): AzimuthTrip {
  assertCondition(condition);
  const { slope } = condition;
  const fallAzimuth = condition.fallAzimuth ?? azimuth;
  const downhill = slope >= 0 ? fallAzimuth : fallAzimuth + Math.PI;
  const tilt = staticTilt(stance, downhill);
  if (Math.abs(slope) >= tilt) return { azimuth, kind: 'cannotStand', staticTilt: tilt };

  const travelSlope = asin(sin(slope) * cos(azimuth - fallAzimuth));
  const ground = { ...condition, slope: travelSlope };
  const limits = stance.edges
    .filter((edge) => cos(azimuth - edge.normal) > 0)
    .map((edge) => {
      const section = sectionAt(edge, { stance, bulk, condition, azimuth, fallAzimuth, travelSlope });
      const { from, to } = edge;
      const lossless = losslessEdgeLimit(section);
      return {
        plastic: { ...speedLimit(plasticEdgeLimit(section), ground), from, to },
        lossless: lossless && { ...speedLimit(lossless, ground), from, to },
      };
    });
  const lossless = limits.flatMap((limit) => limit.lossless ?? []);
  return {
    azimuth,
    kind: 'limit',
    plastic: lowest(limits.map((limit) => limit.plastic)),
    lossless: lossless.length === limits.length ? lowest(lossless) : undefined,
    criticalFriction: tan(staticTilt(stance, azimuth)),
  };
}

interface Travel {
  readonly stance: Standing;
  readonly bulk: MassProperties;
  readonly condition: TravelCondition;
  readonly azimuth: number;
  readonly fallAzimuth: number;
  readonly travelSlope: number;
}

function sectionAt(edge: TipEdge, travel: Travel): EdgeSection {
  const { bulk, condition, azimuth, fallAzimuth, travelSlope } = travel;
  const { slope, descentRate, rate = 0, firstContact = 'worst' } = condition;
  const facing = cos(azimuth - edge.normal);
  const fallAcross = sin(slope) * cos(edge.normal - fallAzimuth);
  // the body turns about the axis a quarter turn from the direction of travel
  const turn = scale3(directionIn(travel.stance.plane, [0 - sin(azimuth), cos(azimuth)]), rate);
  const momentum = applyInertia(bulk.inertia, turn);
  const section: EdgeSection = {
    mass: bulk.mass,
    halfStance: edge.distance,
    centerHeight: edge.height,
    inertia: inertiaAlong(bulk.inertia, edge.axis),
    gravity: condition.gravity * Math.sqrt(cos(slope) * cos(slope) + fallAcross * fallAcross),
    slope: atan2(fallAcross, cos(slope)),
    spin: dot3(edge.axis, momentum),
    spinEnergy: dot3(turn, momentum) / 2,
    facing,
    firstContact,
  };
  if (descentRate === undefined) return section;
  const across = {
    atRest: descentRate * fallAcross,
    perSpeed: facing / cos(travelSlope) - tan(travelSlope) * fallAcross,
  };
  const closing = { atRest: descentRate * cos(slope), perSpeed: 0 - tan(travelSlope) * cos(slope) };
  return { ...section, approach: { across, closing } };
}

/** Limits this near to each other are equal by design [-]: the first of them is named. Rounding leaves some 1e-15. */
const ALIKE = 1e-12;

function lowest<Limit extends SpeedLimit>(limits: readonly Limit[]): Limit {
  return limits.reduce((least, other) =>
    other.horizontal < least.horizontal - ALIKE * Math.abs(least.horizontal) ? other : least,
  );
}

function leastTrip(points: readonly AzimuthTrip[]): LeastTrip {
  const fallen = points.flatMap((point) => (point.kind === 'cannotStand' ? [point] : []));
  if (fallen.length > 0) return fallen.reduce((least, other) => (other.staticTilt < least.staticTilt ? other : least));
  const limits = points.flatMap((point) => (point.kind === 'limit' ? [point] : []));
  const lossless = limits.flatMap(({ lossless, azimuth }) =>
    lossless === undefined ? [] : [{ ...lossless, azimuth }],
  );
  return {
    kind: 'limit',
    plastic: lowest(limits.map(({ plastic, azimuth }) => ({ ...plastic, azimuth }))),
    lossless: lossless.length === limits.length ? lowest(lossless) : undefined,
    criticalFriction: Math.min(...limits.map((point) => point.criticalFriction)),
  };
}
