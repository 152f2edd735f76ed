import type { DescentProfile, Orders } from '../descent/index.ts';
import type { AlertLevel, Objective, RowState, Rule } from '../drill/index.ts';
import type { Judgment, SourceState } from '../estimate/index.ts';
import type { Source } from '../sensors/index.ts';
import type { ReviewView } from '../review/viewReview.ts';
import type { TalkView } from '../talk/viewTalk.ts';
import type { ControlInput, DescentState } from '../world/descent.ts';
import type { EngineSettings } from './engineSettings.ts';
import type { Fork } from './fork.ts';
import type { Pace } from './planChoice.ts';
import type { LiveMargin, Scorecard } from './scorecardTypes.ts';
import type { LeadReadings, PropellantReadings, SiteReadings } from './seatReadings.ts';
import type { SiteNotes } from './siteNotes.ts';
import type { Order } from './turns.ts';
import type { Conduct, Role, Seat, Stage, MemberId, TablePlan, NamedSource } from './tableTypes.ts';

/** What each member is shown. */

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
  /** Since the sample that was last taken into the estimate [s]; absent before one was. */
  readonly usedAge?: number;
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
  readonly role: Role;
  readonly ready: boolean;
  readonly connected: boolean;
  readonly seat?: Seat;
}

export interface WaitingView {
  readonly id: MemberId;
  readonly name: string;
}

export interface YouView {
  readonly id: MemberId;
  readonly name: string;
  readonly role: Role;
  /** Has read the brief. */
  readonly ready: boolean;
  readonly seat?: Seat;
  readonly holds: HeldControls;
  /** A free seat may be taken now. */
  readonly mayTakeSeat: boolean;
  /** Whose word ends or repeats a descent: Lead, else the next seat that is taken. */
  readonly decides: boolean;
  /** Whose word begins and repeats a descent, holds and goes on, and sets the pace: the facilitator, else who decides. */
  readonly runs: boolean;
  /** Which of the held controls still stand where the stand-in left them; absent once the member has set them all. */
  readonly standInLeft?: HeldControls;
}

/** What a crew is told of the drill before it begins. */
export interface BriefView {
  readonly id: string;
  readonly title: string;
  readonly brief: readonly string[];
  readonly objectives: readonly Objective[];
  readonly ruleCard: readonly Pick<Rule, 'id' | 'text'>[];
  /** How fast the brief says to come down [m], [m/s]. */
  readonly profile: DescentProfile;
}

/** A card that was dealt onto this member's display. */
export interface DealtCard {
  readonly text: string;
  readonly level?: AlertLevel;
  /** From the start of the descent [s]. */
  readonly after: number;
}

/** An order of one's own that lies face down. */
export interface LaidView {
  readonly order: Order['kind'];
  readonly source?: Source;
  /** What it sets, as the command has it: a figure, or a word. */
  readonly figure?: number;
  readonly word?: string;
}

/** In turns. */
export interface TurnView {
  /** The clock stands and orders are laid; else they are being played. */
  readonly laying: boolean;
  /** Who has yet to lay one. */
  readonly awaited: readonly Seat[];
  readonly own: readonly LaidView[];
  /** Of the turn being played [s]. */
  readonly left?: number;
}

/** A row of the event list, as it stands. */
export interface RowView {
  readonly id: string;
  readonly state: RowState['state'];
  /** When it was sent last, from the start of the descent [s]. */
  readonly sentAfter?: number;
  /** True height at that moment [m]. */
  readonly sentHeight?: number;
  /** Until it is due [s], where it waits for the clock alone. */
  readonly dueIn?: number;
  /** Which of its responses have been seen, in the order of the list. */
  readonly seen: readonly SeenView[];
}

/** A response that was carried out. */
export interface SeenView {
  readonly response: string;
  /** From the start of the descent [s]. */
  readonly after: number;
}

/** For facilitator and evaluator: what is so. */
export interface ControlView {
  readonly truth: DescentState;
  readonly course?: string;
  readonly rows: readonly RowView[];
}

/** What everybody at the table is shown, whoever they are. Nothing that anybody may not know is in it. */
export interface CommonView {
  readonly stage: Stage;
  readonly held: boolean;
  /** Nobody else may join. */
  readonly locked: boolean;
  /** The landing has been given up: the lander climbs away, and nobody holds it. */
  readonly aborting: boolean;
  readonly seats: readonly SeatView[];
  readonly conduct: Conduct;
  /** Who called the real-world stop. */
  readonly stoppedBy?: string;
  readonly drill?: BriefView;
  readonly engine: EngineSettings;
  readonly site: SiteNotes;
  /** What Sensors named as the cause. */
  readonly named: readonly NamedSource[];
  /** Until the inertial unit is aligned anew, if it goes on level [s]; absent when nobody asked for it. */
  readonly aligning?: number;
  /** Until the next descent begins [s]; absent when nobody asked for it. */
  readonly startingIn?: number;
  readonly drawnIn: DrawnIn;
  /** Present in pencil. */
  readonly map?: MapView;
  readonly spread?: BeliefSpread;
  /** Sources that Sensors, or its stand-in, has rejected: the whole crew is told. Empty in ink. */
  readonly rejected: readonly Source[];
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

/** What a member is shown besides, by role and seat. Nothing that this member may not know is in it. */
export interface OwnView {
  readonly you: YouView;
  readonly turn?: TurnView;
  readonly dealt: readonly DealtCard[];
  readonly control?: ControlView;
  /** Each for its seat alone. */
  readonly propellantReadings?: PropellantReadings;
  readonly siteReadings?: SiteReadings;
  readonly leadReadings?: LeadReadings;
  /** Present in pencil, for Sensors. */
  readonly sources?: readonly SourceReading[];
  /** The others, with their seats, so that one can be handed over: in order of joining. */
  readonly others: readonly OtherView[];
  /** Names of the others who are here without a seat, in order of joining. */
  readonly watching: readonly string[];
  /** Who of them came while this descent runs, and may take no seat until somebody who sits lets them in. */
  readonly waiting: readonly WaitingView[];
  /** While the descent is drawn in pencil its seed is 0, but for the control side: it would give the true ground away. */
  readonly plan: Omit<TablePlan, 'setup' | 'limits' | 'instruments' | 'drill'>;
  readonly talk: TalkView;
  readonly review?: ReviewView;
}

/** Everything one member is shown. */
export type TableView = CommonView & OwnView;
