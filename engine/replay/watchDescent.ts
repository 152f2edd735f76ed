import { replayRecord, type Divergence, type ReplayRefusal, type TableRecord } from '../record/index.ts';
import { accept, type Result } from '../result.ts';
import type { Table, TableModel, TablePlan } from '../table/index.ts';

/** Ticks between two looks: ten a second. */
const LOOK_EVERY = 6;

/** What a record is replayed with. */
export interface ReplayParts {
  readonly plan: TablePlan;
  readonly model: TableModel;
}

interface Watched<Look> {
  /** Of the last descent of the record, in order. */
  readonly looks: readonly Look[];
  /** As it is at the end of the record. */
  readonly table: Table;
  /** The first place where it is not what was recorded. */
  readonly divergence: Divergence | undefined;
}

/** Plays a record again, and looks at its last descent ten times a second while it moves: at each tick of the descent that is a whole tenth, once. */
export function watchDescent<Look>(
  record: TableRecord,
  parts: ReplayParts,
  look: (table: Table) => Look | undefined,
): Result<Watched<Look>, ReplayRefusal> {
  let looks: Look[] = [];
  let descent = 0;
  let seenTick = 0;
  const replayed = replayRecord(record, parts, (table) => {
    const { state, run } = table;
    const { tick } = run.flight;
    if (state.descents !== descent) {
      descent = state.descents;
      looks = [];
      seenTick = 0;
    }
    // on hold the descent stands, and there is nothing new to see of it
    if (state.stage !== 'descending' || tick % LOOK_EVERY !== 0 || tick === seenTick) return;
    seenTick = tick;
    const seen = look(table);
    if (seen !== undefined) looks.push(seen);
  });
  if (!replayed.ok) return replayed;
  const { table, divergence } = replayed.value;
  return accept({ looks, table, divergence });
}
