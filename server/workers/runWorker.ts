import {
  amendPlan,
  forgetName,
  parseRecord,
  replayRecord,
  summarizeRun,
  type Amendment,
  type RecordLine,
  type RunSummary,
  type TableRecord,
} from '../../engine/record/index.ts';
import { accept, formatProblem, refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import { playedModel, type TablePlan } from '../../engine/table/index.ts';
import { layPlan } from '../../levels/index.ts';

/** The thread that plays the records of a logbook again: called by its pool, by name, with the text of a record. */

/** Undefined where the record is none that this engine plays. */
export function summarize({ text }: { readonly text: string }): RunSummary | undefined {
  const read = readRun(text);
  if (!read.ok) return undefined;
  const { record, plan } = read.value;
  const replayed = replayRecord(record, { plan, model: playedModel });
  return replayed.ok ? summarizeRun(record, replayed.value.table) : undefined;
}

/** The lines without a name. */
export function forget(asked: { readonly text: string; readonly name: string }): Result<readonly RecordLine[], string> {
  const read = readRun(asked.text);
  if (!read.ok) return read;
  const { record, plan } = read.value;
  const renamed = forgetName(record, { plan, model: playedModel }, asked.name);
  return renamed.ok ? accept(renamed.value.lines) : renamed;
}

/** The lines that come after it. */
export function amend(asked: {
  readonly text: string;
  readonly amendment: Amendment;
}): Result<readonly RecordLine[], string> {
  const read = readRun(asked.text);
  if (!read.ok) return read;
  const { record, plan } = read.value;
  return amendPlan(record, { plan, model: playedModel }, asked.amendment);
}

function readRun(text: string): Result<{ readonly record: TableRecord; readonly plan: TablePlan }, string> {
  const record = parseRecord(text);
  if (!record.ok) return refuse(whyNotRead(record.error));
  const { choice, drill } = record.value.header.plan;
  const plan = layPlan(choice, drill);
  return plan.ok ? accept({ record: record.value, plan: plan.value }) : refuse(whyNotRead(plan.error));
}

function whyNotRead([problem]: readonly FieldProblem[]): string {
  const other = 'This run was recorded under another version of the engine: it can be kept or deleted, not changed.';
  return problem === undefined || problem.code === 'record/other-version' ? other : formatProblem(problem);
}
