/**
 * Trip limit in the section: the speed at which a body whose foot catches turns over it. Formulas and their derivation
 * stand in edgePivot.ts.
 *
 * The body meets the ground with its feet parallel to it. In the direction of travel the ground falls at φ, so
 *
 *   v_t = v_h cos φ + v_v sin φ            along the ground
 *   w   = v_v cos φ − v_h sin φ            closing, >= 0 at a real contact
 */
import { assert } from '../assert.ts';
import { atan, cos, sin } from '../math/index.ts';
import {
  losslessEdgeLimit,
  plasticEdgeLimit,
  type EdgeLimit,
  type EdgeSection,
  type FirstContact,
} from './edgePivot.ts';

/** A body seen along the edge over which it may tip. */
export interface PivotBody {
  /** [kg] */
  readonly mass: number;
  /** Foot point of the center of mass to the tip edge [m]. */
  readonly halfStance: number;
  /** Center of mass above the footpad plane [m]. */
  readonly centerHeight: number;
  /** About the center of mass along the tip edge [kg·m²]; 0 for a point mass. */
  readonly inertia: number;
  /** Foot point to the edge on the other side [m]; only for standing on ground that rises in the direction of travel. Default: halfStance. */
  readonly oppositeHalfStance?: number;
}

/** The state at contact. */
export interface ContactCondition {
  /** [m/s²] */
  readonly gravity: number;
  /** Fall of the ground in the direction of travel, + downhill [rad]. */
  readonly slope: number;
  /** Downward, in the gravity frame [m/s]. Omitted: the body slides along the ground with no closing speed. */
  readonly descentRate?: number;
  /** Body rate toward the tip edge [rad/s]. Default 0. */
  readonly rate?: number;
  /**
   * Which foot of a rigid body meets the ground first, as seen in the direction of travel; 'together' for legs that crush
   * and so take up the closing speed. 'worst': whichever of the two gives the lower limit. Default 'worst'.
   */
  readonly firstContact?: FirstContact;
}

export type TripLimit =
  | {
      readonly kind: 'limit';
      /** Plastic pivot. Signed: negative where the body trips even when moving the other way. */
      readonly plastic: SpeedLimit;
      /** Energy alone. Never above the plastic limit; undefined when descent and rotation alone carry the energy to fall. */
      readonly lossless: SpeedLimit | undefined;
      /** Below this friction a body that slides along the ground does not overturn: tan α = b/h, on any slope [-]. */
      readonly criticalFriction: number;
    }
  /** The slope alone overturns it. staticTilt: the tilt of the ground at which it falls, over the edge downhill [rad]. */
  | { readonly kind: 'cannotStand'; readonly staticTilt: number };

/** One limit in two measures [m/s]. They differ on a slope. */
export interface SpeedLimit {
  readonly alongGround: number;
  readonly horizontal: number;
}

/**
 * Tilt at which the body falls over its nearest edge, from standing upright on level ground [rad].
 *
 *   α = atan(b / h)                                    geometry: the center of mass stands above the edge
 *
 * b  foot point of the center of mass to the edge [m]     h  center of mass above the footpads [m]
 *
 * The same on every world.
 */
export function staticTiltOf(body: Pick<PivotBody, 'halfStance' | 'centerHeight'>): number {
  return atan(body.halfStance / body.centerHeight);
}

/** Speed limit of a body that trips over one edge, for one state at contact. */
export function tripLimit(body: PivotBody, condition: ContactCondition): TripLimit {
  assertPivotBody(body);
  assertCondition(condition);
  const { slope } = condition;
  const downhillStance = slope >= 0 ? body.halfStance : (body.oppositeHalfStance ?? body.halfStance);
  const staticTilt = staticTiltOf({ halfStance: downhillStance, centerHeight: body.centerHeight });
  if (Math.abs(slope) >= staticTilt) return { kind: 'cannotStand', staticTilt };

  const section = sectionOf(body, condition);
  const lossless = losslessEdgeLimit(section);
  return {
    kind: 'limit',
    plastic: speedLimit(plasticEdgeLimit(section), condition),
    lossless: lossless && speedLimit(lossless, condition),
    criticalFriction: criticalFriction(body.halfStance, body.centerHeight),
  };
}

/**
 * Friction above which a body sliding along a plane overturns [-].
 *
 *   μ = b / h = tan α
 *
 * Friction μN at the feet pitches it forward with the arm h, the ground's push N at the leading foot holds it back with
 * the arm b; gravity has no moment about the center of mass, so the slope does not enter. A body that slides at
 * constant speed (μ = tan φ) shows it: it overturns exactly when φ passes α, as if at rest.
 */
function criticalFriction(halfStance: number, centerHeight: number): number {
  return halfStance / centerHeight;
}

function sectionOf(body: PivotBody, condition: ContactCondition): EdgeSection {
  const { gravity, slope, descentRate, rate = 0, firstContact = 'worst' } = condition;
  const section: EdgeSection = {
    mass: body.mass,
    halfStance: body.halfStance,
    centerHeight: body.centerHeight,
    inertia: body.inertia,
    gravity,
    slope,
    spin: body.inertia * rate,
    spinEnergy: (body.inertia * rate * rate) / 2,
    facing: 1,
    firstContact,
  };
  if (descentRate === undefined) return section;
  const cosine = cos(slope);
  const sine = sin(slope);
  const across = { atRest: descentRate * sine, perSpeed: cosine };
  const closing = { atRest: descentRate * cosine, perSpeed: -sine };
  return { ...section, approach: { across, closing } };
}

/** Both measures of a limit, for ground that falls at `slope` in the direction of travel. */
export function speedLimit(
  limit: EdgeLimit,
  ground: { readonly slope: number; readonly descentRate?: number },
): SpeedLimit {
  const cosine = cos(ground.slope);
  if (limit.kind === 'alongGround') return { alongGround: limit.speed, horizontal: limit.speed * cosine };
  const descent = (ground.descentRate ?? 0) * sin(ground.slope);
  return { alongGround: limit.speed * cosine + descent, horizontal: limit.speed };
}

function assertPivotBody(body: PivotBody): void {
  assert(body.mass > 0 && body.mass < Infinity, 'mass is above 0');
  assert(body.halfStance > 0 && body.halfStance < Infinity, 'half stance is above 0');
  assert(body.centerHeight > 0 && body.centerHeight < Infinity, 'center height is above 0');
  assert(body.inertia >= 0 && body.inertia < Infinity, 'inertia is 0 or more');
  const opposite = body.oppositeHalfStance ?? body.halfStance;
  assert(opposite > 0 && opposite < Infinity, 'opposite half stance is above 0');
}

/** What every contact condition must be; foreign input is parsed before it gets here. */
export function assertCondition(condition: Omit<ContactCondition, 'firstContact'>): void {
  const { gravity, slope, descentRate = 0, rate = 0 } = condition;
  assert(gravity > 0 && gravity < Infinity, 'gravity is above 0');
  assert(Math.abs(slope) < Math.PI / 2, 'slope lies between -90 and 90 degrees');
  assert(descentRate >= 0 && descentRate < Infinity, 'descent rate is 0 or more');
  assert(Math.abs(rate) < Infinity, 'rate is finite');
}
