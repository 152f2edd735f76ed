import type { Fault } from '../faults/fault.ts';
import type { Terrain } from '../ground/terrain.ts';
import type { Lander } from '../lander/lander.ts';

/**
 * The plain data that goes into and comes out of the played world. Nothing here knows how the world is stepped.
 *
 * Section frame: x right, y up against gravity, angles counter-clockwise. SI; time is a whole number of ticks.
 */

/** Everything that decides a descent, besides the inputs. The same setup and inputs give the same bits. */
export interface DescentSetup {
  readonly lander: Lander;
  /** Surface gravity of the world [m/s²]. */
  readonly gravity: number;
  readonly terrain: Terrain;
  readonly start: StartState;
  /** Usable propellant at the start [kg]. */
  readonly propellant: number;
  /** What goes wrong from when on; of these the world plays those of the engine, the tanks and the legs. Default none. */
  readonly faults?: readonly Fault[];
  /** By how many edges of its footprint the lander has turned before the start, see facings.ts. Default 0. */
  readonly facing?: number;
}

export interface StartState {
  /** Of the center of mass [m]. */
  readonly x: number;
  readonly y: number;
  /** Attitude from upright [rad]. */
  readonly angle: number;
  /** [m/s] */
  readonly vx: number;
  readonly vy: number;
  /** [rad/s] */
  readonly rate: number;
}

/** What a crew commands during one tick, already quantized: whole numbers, so that both ends step the same bits. */
export interface ControlInput {
  /** Commanded thrust, whole percent of the engine's maximum, 0 to 100; 0 is engine off. */
  readonly thrustPercent: number;
  /** Commanded attitude, whole degrees from upright, counter-clockwise positive, -30 to 30. */
  readonly tiltDeg: number;
}

/** Valves between tanks and engine, besides that of the throttle. */
export interface Valves {
  /** The cut-off has been fired: nothing reaches the engine, whatever its throttle does. */
  readonly isCut: boolean;
  /** The line that may leak is shut. */
  readonly isLineShut: boolean;
}

export const OPEN_VALVES: Valves = { isCut: false, isLineShut: false };

export const PHASES = ['approach', 'terminal descent', 'final drop', 'contact', 'settling', 'at rest'] as const;
export type Phase = (typeof PHASES)[number];

/** How a descent ends. Whether an upright one was inside its tip limit is not the world's to say: the scorecard does. */
export const OUTCOMES = [
  'upright',
  'tipped downhill',
  'tipped uphill',
  'gear overload',
  'off site',
  'propellant exhausted',
  'aborted',
  'stopped',
] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** A reading of the world after a whole number of ticks. Plain data: survives structuredClone. */
export interface DescentState {
  readonly tick: number;
  readonly phase: Phase;
  /** Center of mass [m], [m/s]. */
  readonly x: number;
  readonly y: number;
  readonly vx: number;
  readonly vy: number;
  /** [rad], [rad/s] */
  readonly angle: number;
  readonly rate: number;
  /** Actual thrust [N]. */
  readonly thrust: number;
  /** Usable propellant left [kg]. */
  readonly propellant: number;
  /** Total mass now [kg]. */
  readonly mass: number;
  /** Lowest footpad above the ground straight below it [m]; 0 or less in contact. */
  readonly height: number;
  /** Slope of the ground under the footpads, positive where it rises to the right [rad]. */
  readonly slope: number;
  /** One entry a leg, in the order of the lander. */
  readonly legs: readonly LegState[];
  readonly commanded: ControlInput;
  /** How far it has turned about its long axis; absent while nobody has ordered a turn. */
  readonly facing?: FacingState;
  /** How it arrived; present from the first contact on: one of `contacts`, see Arrival. */
  readonly touchdown?: TouchdownState;
  /** Every time it met the ground upright, in order; at most MAX_ARRIVALS of them. */
  readonly contacts: readonly Arrival[];
  /** Present at rest. */
  readonly outcome?: Outcome;
}

/** Counter-clockwise seen from above. */
export interface FacingState {
  /** Edges of the footprint that have come to the right since the start: by the last of them the section is laid out. */
  readonly steps: number;
  /** How far it has come in all, and of that since the last such edge [rad]. */
  readonly yaw: number;
  readonly rest: number;
}

export interface LegState {
  /** Center of the sole [m]. */
  readonly footX: number;
  readonly footY: number;
  /** Out of the section, toward the viewer [m]. */
  readonly footZ: number;
  readonly inContact: boolean;
  /** Crushed length so far [m], and as a share of what there is [-]. */
  readonly stroke: number;
  readonly strokeUsed: number;
  /** Every stage is used up: the leg is stiff from then on, and the gear overloaded. */
  readonly usedUp: boolean;
  /** Axial load [N]. */
  readonly load: number;
}

/** The state at a contact, from which the engine computes the tip limit. Gravity frame. */
export interface TouchdownState {
  readonly tick: number;
  readonly x: number;
  /** Positive to the right [m/s]. */
  readonly vx: number;
  /** Positive downward [m/s]. */
  readonly descentRate: number;
  /** [rad], [rad/s] */
  readonly angle: number;
  readonly rate: number;
  /** Slope under the feet, positive where the ground rises to the right [rad]. */
  readonly slope: number;
  /** [kg] */
  readonly mass: number;
  /** On which side of the center of mass the first feet met the ground; both for the hull. */
  readonly firstFoot: 'left' | 'right' | 'both';
  /** By how many edges it had turned since the start; absent where it had not. */
  readonly facing?: number;
}

/** What came between a contact and the one before it: nothing yet, a hop without thrust, or a flight in which the engine burned. */
export const BETWEEN_CONTACTS = ['first', 'hop', 're-light'] as const;
export type BetweenContacts = (typeof BETWEEN_CONTACTS)[number];

/**
 * One time that the lander met the ground, feet or hull, after all of it had been clear. Contacts after the body passed its
 * balance point belong to the fall and are not listed.
 */
export interface Arrival extends TouchdownState {
  readonly after: BetweenContacts;
}

/** One-shot happenings of a tick, for sound, drawing and logs. */
export type DescentEvent =
  | { readonly kind: 'phase'; readonly tick: number; readonly phase: Phase }
  | { readonly kind: 'footDown'; readonly tick: number; readonly leg: number; readonly speed: number }
  | { readonly kind: 'hullDown'; readonly tick: number; readonly speed: number }
  | { readonly kind: 'stageCrushed'; readonly tick: number; readonly leg: number; readonly stage: number }
  | { readonly kind: 'bottomed'; readonly tick: number; readonly leg: number }
  | { readonly kind: 'propellantOut'; readonly tick: number }
  | { readonly kind: 'outcome'; readonly tick: number; readonly outcome: Outcome };
