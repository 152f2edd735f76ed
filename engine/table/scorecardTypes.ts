import type { SensorFault, VehicleFaultKind } from '../faults/index.ts';
import type { Source } from '../sensors/index.ts';
import type { FirstLimit } from '../touchdown/tipLimit.ts';
import type { Arrival, Outcome } from '../world/descent.ts';
import type { Seat } from './tableTypes.ts';

/** Margins in flight, and what the table says at rest. */

/** The margin at the contact that is coming, as it is predicted from how the lander moves now. */
export interface LiveMargin {
  /** Absent when `without` says why; exactly one of the two is there. */
  readonly predicted?: PredictedMargin;
  readonly without?: NoMargin;
  /** Angle left until the plumb line leaves the footprint, in the direction of travel [rad]. */
  readonly tiltLeft: number;
}

/** Speeds horizontal, along the travel [m/s]. */
export interface PredictedMargin {
  /** Tip limit of the contact predicted, from the table of limits, the least within what the prediction may be off by; 0: no speed is allowed. */
  readonly limit: number;
  /** limit − |vx|; negative outside. */
  readonly speedMargin: number;
  /** |vx| / limit [-]; Infinity where no speed at all is allowed. */
  readonly utilisation: number;
  readonly band: MarginBand;
  readonly callout: Callout;
  /** Where the center of mass is at that contact [m], in how long [s], coming down how fast [m/s]. */
  readonly x: number;
  readonly seconds: number;
  readonly descentRate: number;
  /** Of the plane under the feet there, positive where it rises to the right [rad]. */
  readonly slope: number;
}

/**
 * Why the live margin has no number: no table of limits for this plan; the lander does not come down; it comes down faster, is turned farther,
 * or meets steeper ground than the table holds; it would leave the site first; it is on the ground.
 */
export const NO_MARGINS = [
  'no table',
  'not descending',
  'too fast',
  'turned too far',
  'too steep',
  'off site',
  'on the ground',
] as const;
export type NoMargin = (typeof NO_MARGINS)[number];

export const CALLOUTS = ['inside', 'close', 'outside'] as const;
export type Callout = (typeof CALLOUTS)[number];

/** Of a utilisation U = actual / limit, with the edges of `BAND_LIMITS` in marginBand.ts; outside above 1. */
export const MARGIN_BANDS = ['desired', 'adequate', 'thin', 'outside'] as const;
export type MarginBand = (typeof MARGIN_BANDS)[number];

/** How a descent ended: as in the world, an upright one split by whether every contact was inside its tip limit. */
export const CARD_OUTCOMES = [
  'upright inside limit',
  'upright outside limit',
  'tipped downhill',
  'tipped uphill',
  'gear overload',
  'off site',
  'propellant exhausted',
  'aborted',
  'stopped',
] as const satisfies readonly (Exclude<Outcome, 'upright'> | `upright ${string}`)[];
export type CardOutcome = (typeof CARD_OUTCOMES)[number];

/** How fast one arrival may move across the ground, all else as it is. Speeds horizontal, along the travel [m/s]. */
export interface ArrivalLimit {
  /** Least speed at which it tips in the simulation; 0: tips even without; absent: none up to `upTo`. */
  readonly tip?: number;
  /** It stands at `tip` and tips at `tolerance` above it. */
  readonly tolerance: number;
  /** Largest speed looked at. */
  readonly upTo: number;
  /** Friction at which it tips at the least speed: that of the site, or the highest plausible one [-]. */
  readonly friction: number;
  /** Least speed up to the tip limit at which a leg is used up; 0: even without; absent: none. */
  readonly gear?: number;
  /** Which of the two is met first. */
  readonly first: FirstLimit;
  /** Reference alone: closed form for feet together on rigid legs; 0 where it allows no speed. No limit of this lander. */
  readonly closedForm: number;
}

/** One contact of a descent, held against the tip limit of that very arrival. Later contacts count the legs as new. */
export interface JudgedContact {
  /** As the lander arrived, and after what. `slope` is the one slope of this contact. */
  readonly arrival: Arrival;
  /** Absent for an arrival beyond what the simulation takes, such as one faster than 100 m/s; the band is then 'outside'. */
  readonly limit?: ArrivalLimit;
  /** Tip limit − |vx|; where it tips at no speed looked at, `upTo` − |vx|, which is then a lower bound. Absent with the limit [m/s]. */
  readonly speedMargin?: number;
  /** |vx| / tip limit [-]; absent where it tips at no speed looked at, or even without speed. */
  readonly utilisation?: number;
  readonly band: MarginBand;
  readonly callout: Callout;
}

/** What the table says at rest. Every number comes from the engine for what was played. */
export interface Scorecard {
  readonly outcome: CardOutcome;
  /** In order: the first contact, the hardest of the others, and the last; none when it never met the ground. */
  readonly contacts: readonly JudgedContact[];
  /** How often it met the ground in all. */
  readonly contactCount: number;
  /** Index of the contact that used up most of its limit, the earlier of two alike; absent without a contact. */
  readonly worst?: number;
  /** Static tilt limit, what slope, attitude and crushed legs took of it at rest toward the side over which it falls soonest, what is left [rad]. */
  readonly staticTilt?: { readonly limit: number; readonly used: number; readonly left: number };
  /** Lean of the long axis from the vertical at rest [rad]. */
  readonly restTilt: number;
  /** Of the legs as played, left to right: share of the stroke used up [-]. */
  readonly strokeUsed: readonly number[];
  readonly propellantLeft: number;
  /** What was believed at the first contact; absent without instruments. */
  readonly belief?: BelievedArrival;
  /** What went wrong with the sources; absent where nothing did. */
  readonly failures?: readonly SourceFailure[];
  /** What was wrong with engine, tanks and legs; absent where nothing was. */
  readonly defects?: readonly Defect[];
  /** How it was turned about its long axis; absent where nobody ordered that. */
  readonly facing?: CardFacing;
  /** Who sat where when it came to rest; a seat that is missing was covered by the stand-in. */
  readonly crew: readonly CrewEntry[];
  /** PHYSICS_REVISION of the engine that played it. */
  readonly physics: number;
}

/** What the crew believed of the first contact, at the tick at which it came. */
export interface BelievedArrival {
  /** Positive to the right, and positive downwards [m/s]. */
  readonly vx: number;
  readonly descentRate: number;
  /** [rad] */
  readonly angle: number;
  /** Of the lowest foot above the map [m]: 0 when it was right. */
  readonly height: number;
  /** |vx| over the tip limit of the true contact [-]; absent where that tips at no speed looked at, or without speed. */
  readonly utilisation?: number;
}

/** What a model can say of a descent that has ended: all but who flew it and what they knew. */
export type JudgedDescent = Omit<Scorecard, 'crew' | 'belief' | 'failures' | 'defects' | 'facing'>;

/** A turn about the long axis. */
export interface CardFacing {
  /** By how many edges of its footprint it landed turned, counter-clockwise seen from above. */
  readonly steps: number;
  /** When it was first ordered, from the start of the descent [s]. */
  readonly orderedAfter: number;
  /** When the last edge came to the right, from there [s]; absent where the ground came first. */
  readonly doneAfter?: number;
}

export interface SourceFailure {
  readonly source: Source;
  readonly kind: SensorFault['kind'];
  /** From the start of the descent [s]. */
  readonly after: number;
  /** Until it was first put under check or rejected [s], 0 where it was already; absent: nobody did. */
  readonly doubtedAfter?: number;
  /** Until Sensors named what it was [s]; absent: nobody did. */
  readonly namedAfter?: number;
}

/** Something wrong with the lander, besides its sources. */
export interface Defect {
  readonly kind: VehicleFaultKind;
  /** Which leg, in the order of the lander, from 0. */
  readonly leg?: number;
  /** From the start of the descent [s]. */
  readonly after: number;
  /** Until the line was shut, the cut-off fired, or a turn about the long axis ordered [s]; absent: nobody did, or nothing could be done. */
  readonly answeredAfter?: number;
}

export interface CrewEntry {
  readonly seat: Seat;
  readonly name: string;
}
