/** Public door of records: a table whose record is kept, its text, and replaying it. */
export { amendPlan, isAmendment, type Amendment } from './amendPlan.ts';
export { forgetName } from './forgetName.ts';
export {
  askTable,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  resumeKeptTable,
  stepKeptTable,
  tellLine,
  type KeptTable,
} from './keepRecord.ts';
export { forkRecord, type ForkRefusal, type ForkRequest } from './forkRecord.ts';
export { formatRecord, parseRecord } from './parseRecord.ts';
export { COMMAND_KINDS, readCommand } from './readCommand.ts';
export { relayKeptTable } from './relayTable.ts';
export { replayRecord, type Divergence, type ReplayRefusal } from './replayRecord.ts';
export { summarizeRun, type RunSummary } from './summarizeRun.ts';
export {
  MARK_EVERY,
  MARK_FIELDS,
  RECORD_FORMAT,
  type RecordHeader,
  type RecordLine,
  type TableRecord,
} from './record.ts';
