import type { Orders } from '../descent/index.ts';
import type { Judgment, SourceState } from '../estimate/index.ts';
import { SENSOR_FAULT_KINDS, type SensorFault, type VehicleFaultKind } from '../faults/index.ts';
import type { Source } from '../sensors/index.ts';
import type { FirstLimit } from '../touchdown/tipLimit.ts';
import type { Arrival, ControlInput, DescentSetup, DescentState, Outcome } from '../world/descent.ts';
import type { Fork } from './fork.ts';
import type { LimitTable } from './limitTable.ts';
import type { EngineSettings } from './engineSettings.ts';
import type { Pace, PlanChoice } from './planChoice.ts';
import type { LeadReadings, PropellantReadings, SiteReadings } from './seatReadings.ts';
import type { GroundNote, SiteNotes, SpotApproach } from './siteNotes.ts';

/** The vocabulary of the table: who sits where, what may be asked of it, and what each member is shown. */

export const SEATS = ['lead', 'flying', 'sensors', 'propellant', 'site'] as const;
export type Seat = (typeof SEATS)[number];

/** Seats as people call them. */
export const SEAT_NAMES: Readonly<Record<Seat, string>> = {
  lead: 'Lead',
  flying: 'Flying',
  sensors: 'Sensors',
  propellant: 'Propellant',
  site: 'Site',
};

/** gathering: members take seats. descending: the clock runs. resolved: the scorecard lies on the table. */
export const STAGES = ['gathering', 'descending', 'resolved'] as const;
export type Stage = (typeof STAGES)[number];

/** A member's handle at one table: short, opaque, stable across reconnects. */
export type MemberId = string;

export type Command =
  | { readonly kind: 'takeSeat'; readonly seat: Seat }
  | { readonly kind: 'leaveSeat' }
  /** Lets somebody who came while a descent runs take a seat in it. */
  | { readonly kind: 'letIn'; readonly member: MemberId }
  /** Gives the own seat to somebody else; who sits already changes places. */
  | { readonly kind: 'handOver'; readonly member: MemberId }
  /** Lead seats somebody, who changes places with whoever sat there. */
  | { readonly kind: 'deal'; readonly member: MemberId; readonly seat: Seat }
  /** What the crew makes of a source: only an accepted one is believed. */
  | { readonly kind: 'judgeSource'; readonly source: Source; readonly judgment: Judgment }
  /** What Sensors takes to be wrong with a source. */
  | { readonly kind: 'nameCause'; readonly source: Source; readonly cause: NamedCause }
  /** Starts the inertial unit afresh, which takes some seconds of flying upright. */
  | { readonly kind: 'realign' }
  /** What Propellant sets: the most thrust that may be commanded, the cut-off, whether contact shuts the engine down, the leaking line. */
  | { readonly kind: 'setCeiling'; readonly percent: number }
  | { readonly kind: 'armCutOff'; readonly armed: boolean }
  | { readonly kind: 'fireCutOff' }
  | { readonly kind: 'setCutAtContact'; readonly on: boolean }
  | { readonly kind: 'shutLine'; readonly shut: boolean }
  /** What Site says: where to land and which way to come at it, what the ground is like, the limit in force. */
  | { readonly kind: 'markSpot'; readonly meters: number; readonly approach: SpotApproach }
  | { readonly kind: 'clearSpot' }
  | { readonly kind: 'declareGround'; readonly ground: GroundNote }
  | { readonly kind: 'stateLimit'; readonly hundredths: number }
  | { readonly kind: 'begin' }
  | { readonly kind: 'setThrust'; readonly percent: number }
  | { readonly kind: 'setTilt'; readonly degrees: number }
  /** In a descent by orders: what to hold from now on. A drift takes the place of a lean, and a lean of a drift. */
  | { readonly kind: 'orderDescentRate'; readonly tenths: number }
  | { readonly kind: 'orderDrift'; readonly tenths: number }
  | { readonly kind: 'orderLean'; readonly degrees: number }
  /** How fast the clock of a descent runs. */
  | { readonly kind: 'setPace'; readonly pace: Pace }
  | { readonly kind: 'hold' }
  | { readonly kind: 'resume' }
  /** Gives the landing up: the lander climbs away by itself. */
  | { readonly kind: 'abort' }
  /** The same descent once more: at once for one alone, after a countdown for a crew. */
  | { readonly kind: 'again' }
  /** Stops that countdown. */
  | { readonly kind: 'wait' };

/** A command that was not carried out, and why, in words for the person who gave it. */
export interface Refusal {
  readonly code: `table/${string}`;
  readonly reason: string;
}

/** What the table plays: made from levels by the caller, so that the authority stays free of data files. */
export interface TablePlan {
  readonly title: string;
  readonly landerId: string;
  readonly siteId: string;
  readonly worldId: string;
  readonly seed: number;
  /** What it was laid out from; absent where a plan was made otherwise, as tests do. */
  readonly choice: PlanChoice;
  readonly setup: DescentSetup;
  /** With them the crew knows the descent by what they say, until it is at rest; without, it sees the truth. */
  readonly instruments?: InstrumentPlan;
  /** Tip limits of this lander on this world, for the live margin; without it the live margin has no number. */
  readonly limits?: LimitTable;
}

/** How a descent by instruments is laid out. What fails, and when, stands in the faults of the setup. */
export interface InstrumentPlan {
  /** Draws noise and biases of the sensors, the errors of the map and of the first guess. */
  readonly seed: number;
  /** What the stand-ins at Sensors, Propellant and Site do: something about what goes wrong, or nothing at all. */
  readonly standIns: 'awake' | 'asleep';
}

/** What Sensors can name as the cause; nothing takes the word back. */
export const NAMED_CAUSES = ['nothing', ...SENSOR_FAULT_KINDS] as const;
export type NamedCause = (typeof NAMED_CAUSES)[number];

/** A source and what Sensors named as the cause. */
export interface NamedSource {
  readonly source: Source;
  readonly cause: SensorFault['kind'];
}

/** In ink: what is shown is true. In pencil: it is what the crew believes. */
export const DRAWN_IN = ['ink', 'pencil'] as const;
export type DrawnIn = (typeof DRAWN_IN)[number];

/** What one source says, as the seat at Sensors reads it. */
export interface SourceReading {
  readonly source: Source;
  readonly state: SourceState;
  readonly judgment: Judgment;
  /** Its last report was taken into the estimate. */
  readonly isUsed: boolean;
  /** Since its last sample [s]; absent before there was one. */
  readonly age?: number;
  /** Its channels, in the order of CHANNELS. */
  readonly values: readonly number[];
  /** Its worst channel less what the estimate expected, over the standard deviation of that [-]; absent for a source that is not weighed. */
  readonly disagreement?: number;
}

/** The ground as the map has it: heights [m] at even distances from `firstX` on. */
export interface MapView {
  readonly firstX: number;
  readonly spacing: number;
  readonly heights: readonly number[];
  /** Standard deviation of the true height from it [m]. */
  readonly sigma: number;
}

/** How far what is believed may be off: standard deviations [m], [m/s], [rad]. */
export interface BeliefSpread {
  readonly x: number;
  readonly height: number;
  readonly vx: number;
  readonly vy: number;
  readonly angle: number;
}

/**
 * Which control a member's seat holds now: both at Flying, none elsewhere. By orders `thrust` is the order of the descent rate, `tilt` that of what is held
 * across the ground.
 */
export interface HeldControls {
  readonly thrust: boolean;
  readonly tilt: boolean;
}

export interface SeatView {
  readonly seat: Seat;
  /** undefined: covered by a stand-in. */
  readonly name?: string;
  readonly connected: boolean;
  readonly holds: HeldControls;
}

export interface OtherView {
  readonly id: MemberId;
  readonly name: string;
  readonly seat?: Seat;
}

export interface WaitingView {
  readonly id: MemberId;
  readonly name: string;
}

export interface YouView {
  readonly id: MemberId;
  readonly name: string;
  readonly seat?: Seat;
  readonly holds: HeldControls;
  /** A free seat may be taken now. */
  readonly mayTakeSeat: boolean;
  /** Whose word ends or repeats a descent: Lead, else the next seat that is taken. */
  readonly decides: boolean;
  /** Which of the held controls still stand where the stand-in left them; absent once the member has set them all. */
  readonly standInLeft?: HeldControls;
}

/** Everything one member is shown. Nothing that this member may not know is in it. */
export interface TableView {
  readonly stage: Stage;
  readonly held: boolean;
  /** The landing has been given up: the lander climbs away, and nobody holds it. */
  readonly aborting: boolean;
  readonly you: YouView;
  readonly seats: readonly SeatView[];
  readonly engine: EngineSettings;
  readonly site: SiteNotes;
  /** What Sensors named as the cause. */
  readonly named: readonly NamedSource[];
  /** Until the inertial unit is aligned anew, if it goes on level [s]; absent when nobody asked for it. */
  readonly aligning?: number;
  /** Until the next descent begins [s]; absent when nobody asked for it. */
  readonly startingIn?: number;
  /** Each for its seat alone. */
  readonly propellantReadings?: PropellantReadings;
  readonly siteReadings?: SiteReadings;
  readonly leadReadings?: LeadReadings;
  /** The others, with their seats, so that one can be handed over: in order of joining. */
  readonly others: readonly OtherView[];
  /** Names of the others who are here without a seat, in order of joining. */
  readonly watching: readonly string[];
  /** Who of them came while this descent runs, and may take no seat until somebody who sits lets them in. */
  readonly waiting: readonly WaitingView[];
  /** While the descent is drawn in pencil its seed is 0: it would give the true ground away. */
  readonly plan: Omit<TablePlan, 'setup' | 'limits' | 'instruments'>;
  readonly drawnIn: DrawnIn;
  /** Present in pencil. */
  readonly map?: MapView;
  readonly spread?: BeliefSpread;
  /** Sources that Sensors, or its stand-in, has rejected: the whole crew is told. Empty in ink. */
  readonly rejected: readonly Source[];
  /** Present in pencil, for Sensors. */
  readonly sources?: readonly SourceReading[];
  readonly commanded: ControlInput;
  /** What Flying, or the stand-in there, has ordered; absent in a descent by hand. */
  readonly orders?: Orders;
  /** Of the clock of a descent, as it was set last. */
  readonly pace: Pace;
  /** True in ink, believed in pencil. */
  readonly flight: DescentState;
  readonly margin: LiveMargin;
  /** Present when resolved. */
  readonly scorecard?: Scorecard;
  /** Comes some seconds after the scorecard of a descent in which a source failed: what a healthy one would have given. */
  readonly fork?: Fork;
}

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
export type JudgedDescent = Omit<Scorecard, 'crew' | 'belief' | 'failures' | 'defects'>;

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
  /** From the start of the descent [s]. */
  readonly after: number;
  /** Until the line was shut, or the cut-off fired [s]; absent: nobody did, or nothing could be done. */
  readonly answeredAfter?: number;
}

export interface CrewEntry {
  readonly seat: Seat;
  readonly name: string;
}
