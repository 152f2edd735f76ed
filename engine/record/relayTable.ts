import type { Entry, TableModel, TablePlan } from '../table/index.ts';
import { enter, openKeptTable, stepKeptTable, type KeptTable } from './keepRecord.ts';
import type { RecordLine } from './record.ts';

/**
 * A table at which no descent has begun, laid out anew for another plan, with a record of its own: who came, sat down and left does so at the same ticks as
 * at the table before (`gathered`), up to the tick that it had reached. The pace is that of the new plan.
 */
export function relayKeptTable(
  before: { readonly gathered: readonly Entry[]; readonly tick: number },
  parts: { readonly plan: TablePlan; readonly model: TableModel; readonly write: (line: RecordLine) => void },
): KeptTable {
  const kept = openKeptTable(parts);
  const stepTo = (tick: number) => {
    while (kept.table.state.tick < tick) stepKeptTable(kept);
  };
  for (const entry of before.gathered) {
    if (entry.content.kind === 'setPace') continue;
    stepTo(entry.tick);
    enter(kept, entry);
  }
  stepTo(before.tick);
  return kept;
}
