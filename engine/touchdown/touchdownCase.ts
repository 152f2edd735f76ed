import type { Lander } from '../lander/lander.ts';
import type { Soil } from '../ground/soil.ts';
import type { Terrain } from '../ground/terrain.ts';

/**
 * What a simulated touchdown starts from.
 *
 * World frame: x and y level, z up against gravity. Azimuths are measured from +x toward +y. SI; angles in radians.
 */

/** One touchdown of one lander. */
export interface TouchdownCase extends TouchdownConditions {
  readonly lander: Lander;
}

/** Everything that decides a touchdown, besides the lander. */
export interface TouchdownConditions {
  /** Surface gravity of the world [m/s²]. */
  readonly gravity: number;
  readonly ground: Ground;
  readonly state: ContactState;
  /** Legs that are not as they should be; default none. */
  readonly legs?: readonly LegCondition[];
  /** Thrust still there at contact; default none. */
  readonly thrust?: ThrustTail;
  /** Attitude thrusters that go on holding after contact; default none. */
  readonly hold?: AttitudeHold;
  /** Loads that count as overload although no leg is used up; default none. */
  readonly loadLimits?: LoadLimits;
}

/** How the lander arrives. The lander is placed so that its lowest point is `height` above the ground. */
export interface ContactState {
  /** Along `travelAzimuth`, in the gravity frame; + downhill when the azimuth is the default [m/s]. */
  readonly horizontalSpeed: number;
  /** Positive downward, in the gravity frame [m/s]. */
  readonly descentRate: number;
  /** Direction of horizontal travel; default the fall line of the ground [rad]. */
  readonly travelAzimuth?: number;
  /** Turn of the lander about the vertical, + from x toward y; default 0 [rad]. */
  readonly yaw?: number;
  /** After yaw, about the lander's y axis: + leans the nose toward the lander's +x; default 0 [rad]. */
  readonly pitch?: number;
  /** After yaw and pitch, about the lander's x axis: + leans the nose toward the lander's -y; default 0 [rad]. */
  readonly roll?: number;
  /** Body rates about the lander's x, y, z axes; default none [rad/s]. */
  readonly rates?: readonly [number, number, number];
  /** Free fall before the lowest point meets the ground, as after probe contact; default 0 [m]. */
  readonly height?: number;
  /** World x, y of the center of mass at the start; matters on a profile; default 0, 0 [m]. */
  readonly position?: readonly [number, number];
}

export interface Ground {
  readonly shape: GroundShape;
  /** Coulomb friction under footpads and hull [-]. */
  readonly friction: number;
  /** Default rigid. */
  readonly soil?: Soil;
  /** A flat rock (+) or hole (-) under one footpad alone: how much higher the ground is there, along its normal [m]. Each leg once. */
  readonly underPad?: readonly { readonly leg: number; readonly height: number }[];
}

type GroundShape =
  /** Slope at least 0, falling toward `fallAzimuth` (default 0, toward +x) [rad]. */
  | { readonly kind: 'plane'; readonly slope: number; readonly fallAzimuth?: number }
  /** The section of the levels, the same at every y; its own friction and soil are not used. */
  | { readonly kind: 'profile'; readonly terrain: Terrain };

export type LegCondition =
  | { readonly leg: number; readonly kind: 'missing' }
  /** Every crush force times `factor`, above 0 [-]. */
  | { readonly leg: number; readonly kind: 'soft'; readonly factor: number }
  /** Folds at `factor` of its first crush force (default 0.05) without ever being used up [-]. */
  | { readonly leg: number; readonly kind: 'not latched'; readonly factor?: number };

/** Thrust along the lander's long axis: full until cut-off, then falling off exponentially. */
export interface ThrustTail {
  /** At contact [N]. */
  readonly thrust: number;
  /** From first contact, of a footpad or the hull, to cut-off; default 0 [s]. */
  readonly cutoffDelay?: number;
  /** Time in which thrust falls to 1/e after cut-off; default the lag of the lander's engine; 0 is at once [s]. */
  readonly timeConstant?: number;
}

/** Attitude thrusters turning the lander back to the vertical, within the torque of its engine block. */
export interface AttitudeHold {
  /** How long after first contact [s]. */
  readonly duration: number;
  /** Natural frequency of the unsaturated loop; default 1 [rad/s]. */
  readonly bandwidth?: number;
}

export interface LoadLimits {
  /** Axial load of a leg [N]. */
  readonly legLoad?: number;
  /** Acceleration of the center of mass, gravity not counted [m/s²]. */
  readonly acceleration?: number;
}

/** Whether the lander tips; or that and whether a leg is used up, which a run with load limits looks for as long as everything else. */
export const DECIDED_QUESTIONS = ['tipping', 'tipping and gear'] as const;
type DecidedQuestion = (typeof DECIDED_QUESTIONS)[number];

export interface TouchdownOptions {
  /** Fixed step; default DEFAULT_STEP; shorter where the stiffest contact asks for it [s]. */
  readonly step?: number;
  /** Longest simulated time; default TIME_LIMIT_PENDULUM times sqrt(height of the center of mass / gravity) [s]. */
  readonly timeLimit?: number;
  /** Share of critical damping of each contact; default DEFAULT_DAMPING [-]. */
  readonly damping?: number;
  /** Stop as soon as the outcome is certain (default), or simulate on to rest or the time limit. */
  readonly stopWhenDecided?: boolean;
  /** Stop as soon as this is certain, and rely on nothing else in the result; strokes, loads and least margin are those so far. Default: everything. */
  readonly only?: DecidedQuestion;
  /** Most steps that are computed, at least 1; a run that has used them up times out with `outOfSteps`. Default DEFAULT_MAX_STEPS. */
  readonly maxSteps?: number;
  /** Keep a sample each so many steps; default 0, none. */
  readonly historyEvery?: number;
  /** Keep the energy ledger; default false. */
  readonly ledger?: boolean;
}

export const TOUCHDOWN_OUTCOMES = ['upright', 'tipped downhill', 'tipped uphill', 'overloaded', 'timed out'] as const;
export type TouchdownOutcome = (typeof TOUCHDOWN_OUTCOMES)[number];

/** What was exceeded, whatever the outcome. */
export type TouchdownLimit = 'tip downhill' | 'tip uphill' | 'crush exhausted' | 'load' | 'clearance';

export interface TouchdownResult {
  /** Tipped before overloaded before upright; overloaded means a leg used up or a load limit passed. */
  readonly outcome: TouchdownOutcome;
  /** Stays up, since it has too little energy to tip, but has not come to rest. */
  readonly stillRocking: boolean;
  /** Ended because the steps it was given were used up. */
  readonly outOfSteps: boolean;
  /** Every limit that was hit, in the order of TouchdownLimit. */
  readonly limitsHit: readonly TouchdownLimit[];
  /** Least distance of the plumb line through the center of mass inside the edge of the footprint, up to the verdict [m], and when [s]. */
  readonly leastMargin: { readonly value: number; readonly time: number };
  /** Permanent shortening of each leg of the lander, in its order [m]. */
  readonly strokes: readonly number[];
  /** Share of the stroke of each leg that is used up; 1 also for one that was not latched and has folded as far [-]. */
  readonly strokesUsed: readonly number[];
  /** Share of the stroke of each secondary strut that is used up; a used-up one is stiff and is no overload by itself [-]. */
  readonly lateralUsed: readonly number[];
  /** Largest axial load of each leg [N]. */
  readonly peakLoads: readonly number[];
  /** Permanent sinkage of each footpad [m]. */
  readonly sinkages: readonly number[];
  /** Largest acceleration of the center of mass, gravity not counted [m/s²]. */
  readonly peakAcceleration: number;
  /** Least distance of the hull from the ground [m]; 0 or less where it struck. Infinity without hull points. */
  readonly clearance: number;
  /** Farthest that any footpad slid along the ground [m]. */
  readonly slide: number;
  /**
   * Lean of the long axis from the vertical [deg]: at rest, for a lander that stays up, also where the run has ended before; else, and when simulated on or
   * asked for tipping only, at the end of the run.
   */
  readonly restTiltDeg: number;
  /** World azimuth toward which the lander tipped, or leans [rad]. */
  readonly tiltAzimuth: number;
  /** Simulated time from the start [s]; first contact of anything with the ground [s]. */
  readonly time: number;
  readonly firstContact: number;
  /** Steps computed; a free flight counts one. */
  readonly steps: number;
  /** The step really used [s]. */
  readonly step: number;
  /**
   * Times that the plastic return of a leg did not settle within its iterations and went on from its last guess: normally 0. Seen only with
   * legs softened to a millionth; with a count, do not rely on the result.
   */
  readonly unsettledReturns: number;
  readonly history?: readonly TouchdownSample[];
  readonly ledger?: EnergyLedger;
}

/** The lander at one instant, in the world frame. */
export interface TouchdownSample {
  readonly time: number;
  /** Center of mass [m], [m/s]. */
  readonly position: readonly [number, number, number];
  readonly velocity: readonly [number, number, number];
  /** Body to world, w first. */
  readonly attitude: readonly [number, number, number, number];
  /** Body frame [rad/s]. */
  readonly rates: readonly [number, number, number];
  /** Plumb line inside the footprint [m]. */
  readonly margin: number;
  readonly strokes: readonly number[];
  /** Axial [N]. */
  readonly loads: readonly number[];
}

/** Where the energy went, from the start to the end [J]. */
export interface EnergyLedger {
  readonly kineticStart: number;
  readonly kineticEnd: number;
  /** Loss of potential energy. */
  readonly gravityWork: number;
  /** Left in the springs at the end. */
  readonly elasticEnd: number;
  readonly crush: number;
  readonly soil: number;
  readonly friction: number;
  readonly damping: number;
  /** Work of thrust and thrusters on the lander. */
  readonly thrustWork: number;
  /** Largest rise of total mechanical energy above its least value so far; what a passive touchdown must not have. */
  readonly largestRise: number;
}
