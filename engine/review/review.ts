import type { Change } from '../table/fork.ts';
import type { MemberId, Seat } from '../table/tableTypes.ts';
import type { Moment } from '../talk/talk.ts';

/** Of an inject: that it was noticed, that the cause was named, that the crew is right again. */
export const MEASURE_KINDS = ['detect', 'isolate', 'recover'] as const;
export type MeasureKind = (typeof MEASURE_KINDS)[number];

/** What is noted during a descent and made of it afterwards. Plain data, replaced and never written into. */
export interface ReviewState {
  readonly observations: readonly Observation[];
  readonly bookmarks: readonly Bookmark[];
  /** By objective. */
  readonly ratings: Readonly<Record<string, Rated>>;
  /** Measures that a person has put right, by inject. */
  readonly corrections: Readonly<Record<string, Readonly<Partial<Record<MeasureKind, Correction>>>>>;
  readonly hotWash: readonly WashedWord[];
  /** How hard it was for whom; one each. */
  readonly loads: readonly Load[];
  readonly step: DebriefStep;
  readonly topic: Topic;
  /** What is being looked at together. */
  readonly clip: Clip | undefined;
  /** What was agreed, by topic. */
  readonly notes: Readonly<Partial<Record<Topic, string>>>;
  readonly goal: string;
  /** What was asked to be flown again otherwise. */
  readonly whatIfs: readonly Change[];
  readonly actions: readonly Action[];
  /** How many observations, bookmarks and actions there ever were: numbers the next. */
  readonly numbered: number;
  /** Why there was no debrief, where it was declined. */
  readonly declined: string | undefined;
}

/**
 * scorecard: it lies on the table. hot wash: everybody gives a word and one thing. Then the four steps of the debrief. closed: it is over, or was declined.
 */
export const OPEN_STEPS = ['scorecard', 'hot wash', 'reactions', 'description', 'analysis', 'summary'] as const;
export const DEBRIEF_STEPS = [...OPEN_STEPS, 'closed'] as const;
export type DebriefStep = (typeof DEBRIEF_STEPS)[number];

/** What a debrief looks at, in place of the order of time. */
export const TOPICS = ['sharing', 'saying', 'backing', 'leading', 'margin'] as const;
export type Topic = (typeof TOPICS)[number];

/** P: met. S: met, with room to improve. M: met, but it hurt another task, added risk or broke a rule. U: not met. */
export const RATINGS = ['P', 'S', 'M', 'U'] as const;
export type Rating = (typeof RATINGS)[number];

export const SIGNS_OF_WORK = ['strength', 'improve'] as const;

export const ACTION_STATES = ['open', 'under way', 'done'] as const;

export interface Observation extends Moment {
  readonly id: number;
  /** A name. */
  readonly by: string;
  /** Of whom; absent: of the crew. */
  readonly seat?: Seat;
  readonly sign: (typeof SIGNS_OF_WORK)[number];
  readonly topic: Topic;
  readonly text: string;
}

interface Bookmark extends Moment {
  readonly id: number;
  /** A name. */
  readonly by: string;
  readonly text: string;
}

export interface Rated {
  readonly rating: Rating;
  readonly evidence: string;
  /** A name. */
  readonly by: string;
}

/** Seconds after the inject; absent: it was not observed. */
export interface Correction {
  readonly seconds?: number;
  readonly reason: string;
  /** A name. */
  readonly by: string;
}

/**
 * Six sides of a load, each from 1, not at all, to 5, very much: thought, work of the hands, haste, how well it went, effort, strain. The six are those of
 * [HartStaveland1988]; scale and words are ours, and no one figure is made of them.
 */
export const LOAD_SIDES = ['thought', 'hands', 'haste', 'success', 'effort', 'strain'] as const;
export type LoadSide = (typeof LOAD_SIDES)[number];
export const LOAD_RANGE = { least: 1, most: 5 } as const;

/** What one person says of the run from one seat. */
export interface Load extends Readonly<Record<LoadSide, number>> {
  readonly member: MemberId;
  readonly name: string;
  readonly seat: Seat;
  /** What made it hard, or should be otherwise; may be empty. */
  readonly text: string;
}

interface WashedWord {
  readonly member: MemberId;
  readonly name: string;
  readonly word: string;
  readonly thing: string;
}

/** A stretch of the descent that all screens play, from the tick of the table at which it was put on; as a seat saw it, or as it was. */
interface Clip {
  /** Seconds of the descent. */
  readonly from: number;
  readonly to: number;
  readonly seat?: Seat;
  readonly startedTick: number;
}

export interface Action {
  readonly id: number;
  readonly text: string;
  readonly owner: string;
  /** As it was typed: a date, or "before the next run". */
  readonly due: string;
  readonly state: (typeof ACTION_STATES)[number];
  /** A rule that is to change. */
  readonly isRule: boolean;
}

export const NOTHING_REVIEWED: ReviewState = {
  observations: [],
  bookmarks: [],
  ratings: {},
  corrections: {},
  hotWash: [],
  loads: [],
  step: 'scorecard',
  topic: 'sharing',
  clip: undefined,
  notes: {},
  goal: '',
  whatIfs: [],
  actions: [],
  numbered: 0,
  declined: undefined,
};

/** Of a clip, at the most [s]. */
export const LONGEST_CLIP = 30;
/** [characters] */
export const LONGEST_WORD = 24;
export const LONGEST_NOTE = 280;
/** A debrief is no campaign. */
export const MOST_WHAT_IFS = 12;
/** Of each list. */
export const MOST_NOTES = 200;
