import type { ControlInput, DescentSetup, DescentState, Outcome, TouchdownState } from '../world/descent.ts';

/** The vocabulary of the table: who sits where, what may be asked of it, and what each member is shown. */

export const SEATS = ['lead', 'flying', 'sensors', 'propellant', 'site'] as const;
export type Seat = (typeof SEATS)[number];

/** gathering: members take seats. descending: the clock runs. resolved: the scorecard lies on the table. */
export const STAGES = ['gathering', 'descending', 'resolved'] as const;
export type Stage = (typeof STAGES)[number];

/** A member's handle at one table: short, opaque, stable across reconnects. */
export type MemberId = string;

export type Command =
  | { readonly kind: 'takeSeat'; readonly seat: Seat }
  | { readonly kind: 'leaveSeat' }
  | { readonly kind: 'begin' }
  | { readonly kind: 'setThrust'; readonly percent: number }
  | { readonly kind: 'setTilt'; readonly degrees: number }
  | { readonly kind: 'hold' }
  | { readonly kind: 'resume' }
  | { readonly kind: 'again' };

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
  readonly setup: DescentSetup;
}

/** Which control a member's seat holds now. Flying holds both until a person takes Propellant, who then holds thrust. */
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

export interface YouView {
  readonly id: MemberId;
  readonly name: string;
  readonly seat?: Seat;
  readonly holds: HeldControls;
  /** Which of the held controls still stand where the stand-in left them; absent once the member has set them all. */
  readonly standInLeft?: HeldControls;
}

/** Everything one member is shown. Nothing that this member may not know is in it. */
export interface TableView {
  readonly stage: Stage;
  readonly held: boolean;
  readonly you: YouView;
  readonly seats: readonly SeatView[];
  /** Names of the others who are here without a seat, in order of joining. */
  readonly watching: readonly string[];
  readonly plan: Omit<TablePlan, 'setup'>;
  readonly commanded: ControlInput;
  readonly flight: DescentState;
  readonly margin: LiveMargin;
  /** Present when resolved. */
  readonly scorecard?: Scorecard;
}

/** The margin if the lander met the ground as it moves now. Speeds in m/s, positive to the right. */
export interface LiveMargin {
  /** Horizontal speed limit in the present direction of travel; 0 where no speed at all is allowed [m/s]. */
  readonly limit: number;
  /** limit − |vx|, or the margin against tripping backward when that is less; negative outside [m/s]. */
  readonly speedMargin: number;
  /** |vx| / limit [-]; Infinity where no speed at all is allowed. */
  readonly utilisation: number;
  readonly callout: Callout;
  /** Angle left until the plumb line leaves the footprint, in the direction of travel [rad]. */
  readonly tiltLeft: number;
}

export const CALLOUTS = ['inside', 'close', 'outside'] as const;
export type Callout = (typeof CALLOUTS)[number];

/** Utilisation U = actual / limit: desired U <= 0.60, adequate <= 0.85, thin <= 1, outside > 1. */
export const MARGIN_BANDS = ['desired', 'adequate', 'thin', 'outside'] as const;
export type MarginBand = (typeof MARGIN_BANDS)[number];

/** What the table says at rest. Every number comes from the engine for the state in which it arrived, the worst of several touchdowns. */
export interface Scorecard {
  readonly outcome: Outcome;
  readonly touchdown?: TouchdownState;
  /** Horizontal speed limits in the direction of travel at that contact state [m/s]. */
  readonly limit?: { readonly plastic: number; readonly lossless?: number };
  /** limit − |vx|, or the margin against tripping backward when that is less [m/s]. */
  readonly speedMargin?: number;
  /** |vx| / limit [-]; absent where no speed at all is allowed (the band is then 'outside'). */
  readonly utilisation?: number;
  readonly band?: MarginBand;
  readonly callout?: Callout;
  /** Static tilt limit in the direction of travel, what slope and attitude used of it at rest, what is left [rad]. */
  readonly staticTilt?: { readonly limit: number; readonly used: number; readonly left: number };
  readonly strokeUsed: readonly number[];
  readonly propellantLeft: number;
}
