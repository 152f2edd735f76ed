import type { Entry } from '../table/entry.ts';
import type { DescentMark } from '../world/markDescent.ts';
import type { PlanChoice } from '../table/planChoice.ts';
import type { TableModel } from '../table/tableModel.ts';
import type { Stage, TablePlan } from '../table/tableTypes.ts';

/**
 * The record of a table: where it started from, and in order what came to it from outside, with marks of the state along the way. Everything else about
 * the table follows from it.
 */

/** The only format that is read. */
export const RECORD_FORMAT = 'kilter-record/4';

export interface TableRecord {
  readonly header: RecordHeader;
  readonly lines: readonly RecordLine[];
}

/** What a record is played with. */
export interface RecordParts {
  readonly plan: TablePlan;
  readonly model: TableModel;
}

export interface RecordHeader {
  readonly caution: string;
  readonly format: typeof RECORD_FORMAT;
  /** PHYSICS_REVISION of the engine that played it. */
  readonly physics: number;
  /** Ticks a second. */
  readonly tickRate: number;
  /** What was chosen to be played: laid out by whoever replays, into the very setup that has this hash. */
  readonly plan: RecordedPlan;
}

export interface RecordedPlan {
  readonly choice: PlanChoice;
  /** The drill that is played, as its file has it; read by whoever lays the plan out. Absent: a free descent. */
  readonly drill?: unknown;
  /** Of the whole setup, from `hashValue`. */
  readonly setupHash: string;
}

export type RecordLine =
  | ({ readonly line: 'entry' } & Entry)
  | ({ readonly line: 'mark'; readonly tick: number } & MarkFields);

/** The state after a tick: the descent as `DescentMark` has it, the table besides the played world and the instruments as a hash each, and the hash of all. */
export interface MarkFields extends Omit<DescentMark, 'tick'> {
  readonly stage: Stage;
  readonly table: string;
  readonly belief: string;
  readonly hash: string;
}

/** In the order in which a difference is looked for: what people read first. */
export const MARK_FIELDS = [
  'stage',
  'phase',
  'x',
  'y',
  'angle',
  'vx',
  'vy',
  'rate',
  'thrust',
  'propellant',
  'legs',
  'contacts',
  'hull',
  'belief',
  'table',
  'hash',
] as const satisfies readonly (keyof MarkFields)[];
export type MarkField = (typeof MARK_FIELDS)[number];

/** Ticks between two marks while a descent runs: half a second. */
export const MARK_EVERY = 30;
