import { CAUTION } from '../constants.ts';
import { hashValue } from '../math/hashValue.ts';
import { accept, refuse, type Result } from '../result.ts';
import {
  applyEntry,
  createTable,
  judgeCommand,
  judgeJoin,
  noteLine,
  stepTable,
  type Command,
  type Entry,
  type MemberId,
  type Refusal,
  type Role,
  type Table,
  type TableModel,
  type TablePlan,
} from '../table/index.ts';
import { PHYSICS_REVISION, TICK_RATE, type DescentEvent } from '../world/index.ts';
import { markTable } from './markTable.ts';
import { MARK_EVERY, RECORD_FORMAT, type RecordHeader, type RecordLine, type TableRecord } from './record.ts';
import { replayRecord, type Divergence, type ReplayRefusal } from './replayRecord.ts';

/**
 * A table whose record is kept. Whatever comes from outside goes through here: it is judged, written down, and only then carried out, so that whoever
 * gets an answer can rely on it.
 */
export interface KeptTable {
  readonly table: Table;
  readonly write: (line: RecordLine) => void;
}

/** `write` is called with each line before it takes effect; what it throws keeps the line from taking effect. */
export function openKeptTable(parts: {
  readonly plan: TablePlan;
  readonly model: TableModel;
  readonly write: (line: RecordLine) => void;
}): KeptTable {
  const kept = { table: createTable(parts), write: parts.write };
  writeMark(kept);
  return kept;
}

/** A table taken up where its record ends; `write` gets what comes after. Refused when the record does not replay to the bit. */
export function resumeKeptTable(
  record: TableRecord,
  parts: { readonly plan: TablePlan; readonly model: TableModel; readonly write: (line: RecordLine) => void },
): Result<KeptTable, Divergence | ReplayRefusal> {
  const replayed = replayRecord(record, parts);
  if (!replayed.ok) return replayed;
  const { table, divergence } = replayed.value;
  return divergence === undefined ? accept({ table, write: parts.write }) : refuse(divergence);
}

/** Where a record of this plan starts. */
export function headerOf({ choice, drill, setup }: TablePlan): RecordHeader {
  const plan = { choice, setupHash: hashValue(setup), ...(drill && { drill }) };
  return { format: RECORD_FORMAT, caution: CAUTION, physics: PHYSICS_REVISION, tickRate: TICK_RATE, plan };
}

/** Somebody comes to the table, without a seat yet. */
export function joinTable(kept: KeptTable, name: string, role?: Role): Result<MemberId, Refusal> {
  const judged = judgeJoin(kept.table.state, name, role);
  if (!judged.ok) return judged;
  enter(kept, judged.value);
  return accept(judged.value.member);
}

/** A member asks for something. What is refused leaves no trace. */
export function askTable(kept: KeptTable, id: MemberId, command: Command): Result<void, Refusal> {
  const judged = judgeCommand(kept.table.state, id, command);
  if (!judged.ok) return judged;
  enter(kept, judged.value);
  return accept(undefined);
}

/**
 * The line to a member dropped, or is back; or the member is gone for good, and the seat is free. Interrupted: it was the table itself that was away.
 */
export function tellLine(kept: KeptTable, id: MemberId, kind: 'dropped' | 'returned' | 'left' | 'interrupted'): void {
  enter(kept, noteLine(kept.table.state, id, kind));
}

/** One tick, with a mark where one is due: every half second of a descent, and at its end. */
export function stepKeptTable(kept: KeptTable): readonly DescentEvent[] {
  const { state } = kept.table;
  const moves = isMoving(state);
  const events = stepTable(kept.table);
  if (moves && (state.tick % MARK_EVERY === 0 || !isMoving(state))) writeMark(kept);
  return events;
}

function isMoving({ stage, held }: Table['state']): boolean {
  return stage === 'descending' && !held;
}

/** A mark of the state now, as a record has it at its end. */
export function markLine(table: Table): RecordLine {
  return { line: 'mark', tick: table.state.tick, ...markTable(table) };
}

function writeMark(kept: KeptTable): void {
  kept.write(markLine(kept.table));
}

/** Writes an entry down, then carries it out. It has been judged. */
export function enter(kept: KeptTable, entry: Entry): void {
  kept.write({ line: 'entry', ...entry });
  applyEntry(kept.table, entry);
}
