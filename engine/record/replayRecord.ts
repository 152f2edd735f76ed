import { hashValue } from '../math/hashValue.ts';
import { accept, refuse, type Result } from '../result.ts';
import {
  applyEntry,
  createTable,
  judgeEntry,
  stepTable,
  type Table,
  type TableModel,
  type TablePlan,
} from '../table/index.ts';
import { markTable } from './markTable.ts';
import { MARK_FIELDS, type MarkField, type MarkFields, type RecordLine, type TableRecord } from './record.ts';

/** A record being replayed: the table as it is after the lines so far. */
interface Replay {
  readonly table: Table;
  /** How many marks have been held against the table. */
  marks: number;
  /** The first place where the table is not what was recorded. The replay goes on after it. */
  divergence: Divergence | undefined;
}

export interface Divergence {
  readonly tick: number;
  /** The first marked field that differs; 'entry' for one that the table, as it was, refuses. */
  readonly field: MarkField | 'entry';
  readonly recorded: string;
  readonly replayed: string;
}

export interface ReplayRefusal {
  readonly code: 'record/other-setup';
  /** Hashes of the setup. */
  readonly recorded: string;
  readonly laidOut: string;
}

/** Sets up a replay. Refused when the plan is not laid out, to the bit, as it was when it was recorded. */
function createReplay(
  { header }: Pick<TableRecord, 'header'>,
  parts: { readonly plan: TablePlan; readonly model: TableModel },
): Result<Replay, ReplayRefusal> {
  const recorded = header.plan.setupHash;
  const laidOut = hashValue(parts.plan.setup);
  if (laidOut !== recorded) return refuse({ code: 'record/other-setup', recorded, laidOut });
  return accept({ table: createTable(parts), marks: 0, divergence: undefined });
}

/** Plays up to a line and takes it: an entry is carried out, a mark is held against the table. */
function replayLine(replay: Replay, line: RecordLine, watch?: (table: Table) => void): void {
  const { table } = replay;
  const { tick } = line;
  while (table.state.tick < tick) {
    stepTable(table);
    watch?.(table);
  }
  if (line.line === 'entry') {
    const refusal = judgeEntry(table.state, line);
    if (refusal === undefined) applyEntry(table, line);
    // what this table could not have got is left out
    else replay.divergence ??= { tick, field: 'entry', recorded: line.content.kind, replayed: refusal.reason };
  } else {
    replay.marks += 1;
    replay.divergence ??= differenceOf(tick, line, markTable(table));
  }
}

/** Replays a whole record. `watch` looks at the table after each tick. */
export function replayRecord(
  record: TableRecord,
  parts: { readonly plan: TablePlan; readonly model: TableModel },
  watch?: (table: Table) => void,
): Result<Replay, ReplayRefusal> {
  const created = createReplay(record, parts);
  if (created.ok) for (const line of record.lines) replayLine(created.value, line, watch);
  return created;
}

function differenceOf(tick: number, recorded: MarkFields, replayed: MarkFields): Divergence | undefined {
  const field = MARK_FIELDS.find((name) => recorded[name] !== replayed[name]);
  if (field === undefined) return undefined;
  return { tick, field, recorded: String(recorded[field]), replayed: String(replayed[field]) };
}
