import type { Drill } from '../drill/index.ts';
import type { Judgment } from '../estimate/index.ts';
import { SENSOR_FAULT_KINDS, type SensorFault } from '../faults/index.ts';
import type { Terrain } from '../ground/index.ts';
import type { Source } from '../sensors/index.ts';
import type { ReviewCommand } from '../review/commands.ts';
import type { TalkCommand } from '../talk/commands.ts';
import type { DescentSetup } from '../world/descent.ts';
import type { LimitTable } from './limitTable.ts';
import type { Pace, PlanChoice } from './planChoice.ts';
import type { GroundNote, SpotApproach } from './siteNotes.ts';

/** The vocabulary of the table: who sits where, what may be asked of it, and what it plays. */

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

/**
 * What a person is at a table. Crew take seats and know what their instruments say. The facilitator runs the table and the evaluator looks on: both see the truth.
 * Observers and the room screen see what the crew believes together.
 */
export const ROLES = ['crew', 'facilitator', 'evaluator', 'observer', 'room screen'] as const;
export type Role = (typeof ROLES)[number];

/** What a facilitator makes of somebody. */
export const GIVEN_ROLES = ['crew', 'evaluator', 'observer', 'room screen'] as const satisfies readonly Role[];

/** By how much an inject may be put off at once [s]. */
export const DELAY_RANGE_S = { least: 1, most: 600 } as const;

/** Ways to play time. continuous: the clock runs. stop and talk: it is held to talk. turns: it stands until orders are turned over, then runs some seconds. */
export const CONDUCTS = ['continuous', 'stop and talk', 'turns'] as const;
export type Conduct = (typeof CONDUCTS)[number];

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
  /** Gives the own seat to somebody who has none; whoever decides may change places with anybody. */
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
  /** Turns the lander about its long axis until it stands so many edges of its footprint, counter-clockwise seen from above, from how it started. */
  | { readonly kind: 'orderFacing'; readonly steps: number }
  | { readonly kind: 'begin' }
  | { readonly kind: 'setThrust'; readonly percent: number }
  | { readonly kind: 'setTilt'; readonly degrees: number }
  /** In a descent by orders: what to hold from now on. A drift takes the place of a lean, and a lean of a drift. */
  | { readonly kind: 'orderDescentRate'; readonly tenths: number }
  | { readonly kind: 'orderDrift'; readonly tenths: number }
  | { readonly kind: 'orderLean'; readonly degrees: number }
  /** How fast the clock of a descent runs. */
  | { readonly kind: 'setPace'; readonly pace: Pace }
  /** What a person is here; the facilitator's own part goes to somebody else by `handOverTable` alone. */
  | { readonly kind: 'setRole'; readonly member: MemberId; readonly role: (typeof GIVEN_ROLES)[number] }
  | { readonly kind: 'handOverTable'; readonly member: MemberId }
  | { readonly kind: 'remove'; readonly member: MemberId }
  /** Whether nobody else may join. */
  | { readonly kind: 'setLock'; readonly locked: boolean }
  /** Has read the brief, or not yet. */
  | { readonly kind: 'setReady'; readonly ready: boolean }
  /** Real-world stop: something outside of the exercise wants everybody. All stands until it is lifted. */
  | { readonly kind: 'stop' }
  | { readonly kind: 'liftStop' }
  /** Ends the descent where it is. */
  | { readonly kind: 'end' }
  /** One inject of the drill: now, or once more; not at all; later. */
  | { readonly kind: 'sendInject'; readonly inject: string }
  | { readonly kind: 'skipInject'; readonly inject: string }
  | { readonly kind: 'delayInject'; readonly inject: string; readonly seconds: number }
  | { readonly kind: 'setConduct'; readonly conduct: Conduct }
  /** In turns: carries out the orders that lie face down, and lets the clock run for a few seconds. */
  | { readonly kind: 'turnOver' }
  /** In turns: takes the own orders back that lie face down. */
  | { readonly kind: 'takeBack' }
  | { readonly kind: 'hold' }
  | { readonly kind: 'resume' }
  /** Gives the landing up: the lander climbs away by itself. */
  | { readonly kind: 'abort' }
  /** The same descent once more: at once for one alone, after a countdown for a crew. */
  | { readonly kind: 'again' }
  /** Stops that countdown. */
  | { readonly kind: 'wait' }
  | TalkCommand
  | ReviewCommand;

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
  /** What is rehearsed; absent: a free descent. */
  readonly drill?: Drill;
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
  /** The ground that was surveyed; absent: as it is. */
  readonly surveyed?: Terrain;
}

/** What Sensors can name as the cause; nothing takes the word back. */
export const NAMED_CAUSES = ['nothing', ...SENSOR_FAULT_KINDS] as const;
export type NamedCause = (typeof NAMED_CAUSES)[number];

/** A source and what Sensors named as the cause. */
export interface NamedSource {
  readonly source: Source;
  readonly cause: SensorFault['kind'];
}
