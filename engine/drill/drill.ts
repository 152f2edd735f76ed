import type { Judgment } from '../estimate/index.ts';
import type { DescentProfile } from '../descent/index.ts';
import type { UndatedFault } from '../faults/fault.ts';
import type { Source } from '../sensors/sources.ts';
import type { PlanChoice } from '../table/planChoice.ts';
import type { Sentence } from '../talk/sentences.ts';
import type { NamedCause, Seat } from '../table/tableTypes.ts';

/**
 * A drill: what a crew is told, what it is to learn, and what goes wrong, when, with the response that was written before anybody played. Plain data; only
 * `parseDrill` (levels/drills) makes one from foreign data. It is what its file says, word for word, so that a record can carry it: angles are in degrees and say so.
 * Heights and speeds are true ones [m], [m/s]; times are seconds of the descent.
 */
export interface Drill {
  readonly format: typeof DRILL_FORMAT;
  /** Lower-case identifier, such as 'quiet-altimeter'. */
  readonly id: string;
  readonly title: string;
  /** One sentence, for whoever chooses. Gives nothing away. */
  readonly summary: string;
  /** From 1, for a first crew, to 4. */
  readonly level: number;
  /** From brief to report, about [min]. */
  readonly minutes: number;
  /** Paragraphs that everybody reads before the descent. */
  readonly brief: readonly string[];
  /** One to three. */
  readonly objectives: readonly Objective[];
  readonly ruleCard: readonly Rule[];
  readonly plan: DrillPlan;
  /** How fast the brief says to come down [m], [m/s]: the stand-in at Flying keeps to it. */
  readonly profile: DescentProfile;
  /** What is so from the first tick on and is not on the brief. */
  readonly truth: DrillTruth;
  /** Where the seed picks one of several courses: their names. Rows of the event list say to which they belong. */
  readonly courses: readonly string[];
  readonly events: readonly EventRow[];
  /** What the evaluator asks, each for an objective. */
  readonly questions: readonly Question[];
}

export const DRILL_FORMAT = 'kilter-drill/1';

/** What is flown. By instruments always. */
type DrillPlan = Pick<PlanChoice, 'lander' | 'site' | 'world' | 'start' | 'mode' | 'pace' | 'seed'>;

interface DrillTruth {
  /** How much steeper every slope of the ground is than the map says [deg]; the map shows the site as it is filed, and what is level is level. */
  readonly steeperDeg: number;
  /** What fails from the start, by a name that effects can mend. */
  readonly faults: readonly NamedFault[];
}

export interface Objective {
  readonly id: string;
  readonly text: string;
}

export interface Rule {
  readonly id: string;
  readonly text: string;
  /** Of a rule by which the landing is given up: when, as far as the screen of Lead tells. The stand-in at Lead keeps it. */
  readonly abort?: AbortSign;
}

/** What calls for an abort below a believed height [m]. */
export type AbortSign =
  /** The height may be off by more than this [m], as screens show it: twice the standard deviation. */
  | { readonly when: 'heightUnsure'; readonly below: number; readonly over: number }
  /** Nobody has marked a spot. */
  | { readonly when: 'noSpot'; readonly below: number };

interface Question {
  readonly objective: string;
  readonly text: string;
}

/** Contextual: part of the story. Contingency: only where the crew has not done what it should have by then. */
export const EVENT_KINDS = ['contextual', 'contingency'] as const;

/** One inject, and what is expected of whom. */
export interface EventRow {
  readonly id: string;
  readonly title: string;
  readonly kind: (typeof EVENT_KINDS)[number];
  /** The course it belongs to; absent: to all. */
  readonly course?: string;
  readonly trigger: Trigger;
  /** Of a contingency: the response that, once observed, makes it needless. */
  readonly unless?: string;
  readonly effects: readonly Effect[];
  /** What the crew can see of it, for the control side. */
  readonly visible: string;
  /** What is so. */
  readonly groundTruth: string;
  /** The objective it serves. */
  readonly objective: string;
  readonly responses: readonly TargetedResponse[];
  readonly note?: string;
}

/** When an inject is sent by itself. Each fires once. A held clock fires none. */
export type Trigger =
  | { readonly on: 'time'; readonly seconds: number }
  /** When the true height of the lowest foot first is no more than this. */
  | { readonly on: 'height'; readonly meters: number }
  | { readonly on: 'state'; readonly quantity: StateQuantity; readonly above: number }
  | { readonly on: 'state'; readonly quantity: StateQuantity; readonly below: number }
  /** So long after another was sent. */
  | { readonly on: 'inject'; readonly inject: string; readonly seconds: number }
  | { readonly on: 'hand' };

/**
 * True quantities that a trigger can wait for: descent rate [m/s, down positive], speed across [m/s, either way], lean [deg, either way], usable propellant [s of
 * hover], time since the first contact [s; 0 before].
 */
export const STATE_QUANTITIES = ['descentRate', 'drift', 'leanDeg', 'propellantSeconds', 'sinceContact'] as const;
export type StateQuantity = (typeof STATE_QUANTITIES)[number];

/** Displays that can show what an inject says. */
export const DISPLAYS = ['lead', 'flying', 'sensors', 'propellant', 'site', 'room'] as const;
export type Display = (typeof DISPLAYS)[number];

/** Emergency: act at once. Warning: act soon. Caution: know it now. Advisory: know it. */
export const ALERT_LEVELS = ['emergency', 'warning', 'caution', 'advisory'] as const;
export type AlertLevel = (typeof ALERT_LEVELS)[number];

export type Effect =
  /** Something fails, for so long or to the end [s]. */
  | { readonly do: 'fail'; readonly name: string; readonly fault: UndatedFault; readonly seconds?: number }
  /** A fault ends, for so long or for good [s]. */
  | { readonly do: 'mend'; readonly name: string; readonly seconds?: number }
  /** Words on these displays: a card dealt onto the table, or an alert. */
  | { readonly do: 'tell'; readonly text: string; readonly to: readonly Display[]; readonly level?: AlertLevel };

export interface NamedFault {
  readonly name: string;
  readonly fault: UndatedFault;
}

/** What somebody is expected to do after an inject. */
export interface TargetedResponse {
  readonly id: string;
  readonly seat: Seat;
  readonly text: string;
  /** After the inject [s]. */
  readonly within: number;
  /** How it is known that it was done. */
  readonly seen: Sign;
}

/** What shows that a response was carried out. `by: evaluator` is for people to say. */
export type Sign =
  | { readonly by: 'evaluator' }
  /** A callout that names this source, or, without one, this topic. */
  | { readonly by: 'callout'; readonly source?: Source; readonly sentence?: Sentence }
  | { readonly by: 'judgment'; readonly source: Source; readonly judgments: readonly Judgment[] }
  | { readonly by: 'cause'; readonly source: Source; readonly cause: NamedCause }
  | { readonly by: 'poll' }
  | { readonly by: 'decision' }
  | { readonly by: 'abort' }
  | { readonly by: 'cutOff' }
  | { readonly by: 'lineShut' }
  | { readonly by: 'limit' }
  | { readonly by: 'spot' }
  /** An order to turn the lander about its long axis. */
  | { readonly by: 'facing' };
