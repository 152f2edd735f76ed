import { accept, refuse, type Result } from '../result.ts';
import type { Command } from '../table/index.ts';
import { NOT_AS_RECORDED } from './forgetName.ts';
import { askTable, joinTable, markLine, resumeKeptTable, tellLine } from './keepRecord.ts';
import type { RecordLine, RecordParts, TableRecord } from './record.ts';

const AMENDMENTS = ['setAction', 'dropAction', 'setGoal'] as const satisfies readonly Command['kind'][];

/** What may still be done to the plan of improvement of a run that is over. */
export type Amendment = Extract<Command, { readonly kind: (typeof AMENDMENTS)[number] }>;

export function isAmendment(command: Command): command is Amendment {
  return AMENDMENTS.some((kind) => kind === command.kind);
}

/** Under which name somebody comes to a table of which only the record is left. */
const READER = 'Logbook';

/**
 * The lines by which a record goes on when its plan of improvement is worked on after the table has ended: somebody comes as evaluator, gives the command, and
 * leaves; a mark holds that a replay ends there. Refused in words.
 */
export function amendPlan(
  record: TableRecord,
  parts: RecordParts,
  amendment: Amendment,
): Result<readonly RecordLine[], string> {
  const lines: RecordLine[] = [];
  const resumed = resumeKeptTable(record, { ...parts, write: (line) => lines.push(line) });
  if (!resumed.ok) return refuse(NOT_AS_RECORDED);
  const kept = resumed.value;
  const joined = joinTable(kept, READER, 'evaluator');
  if (!joined.ok) return refuse(joined.error.reason);
  const asked = askTable(kept, joined.value, amendment);
  if (!asked.ok) return refuse(asked.error.reason);
  tellLine(kept, joined.value, 'left');
  return accept([...lines, markLine(kept.table)]);
}
