import { formatProblem } from '../../engine/result.ts';
import type { TableRecord } from '../../engine/record/index.ts';
import { playedModel, type TablePlan } from '../../engine/table/index.ts';
import { firstLanding, layPlan } from '../../levels/index.ts';
import type { ServerParts } from '../../server/rooms/index.ts';
import { openJournal } from '../../server/storage/index.ts';
import { flyTroubled } from './flyTroubled.ts';
import { laid } from './planChoice.ts';

export const SHELVED_PLAN = laid({ start: 'low', seed: 2, sensorTrouble: 'seeded' });

/** Ada, alone at the table, writes her own name into what she says and into the plan. */
export function flyShelved(): TableRecord {
  const { record } = flyTroubled(SHELVED_PLAN, 'lead', [
    { 60: [{ kind: 'say', to: 'all', text: 'ADA here: what does Adam see?' }] },
  ]);
  return record;
}

/** Puts a run into the folder as a server before this one left it. */
export function shelveRun(
  folder: string,
  { record, code, key, now }: { record: TableRecord; code: string; key?: string; now?: number },
): void {
  const journal = openJournal({
    folder,
    report: (line) => {
      throw new Error(line);
    },
    now: () => now ?? Date.now(),
  });
  const table = journal.open(code, record.header, key);
  for (const line of record.lines) table.write(line);
  table.end();
  journal.close();
}

/** A server that plays what the shipped one plays. */
export const PLAYED_PARTS: Pick<ServerParts, 'model' | 'plan'> = {
  model: playedModel,
  plan(choice, recorded): TablePlan {
    if (choice === undefined) return firstLanding(1);
    const plan = layPlan(choice, recorded);
    if (!plan.ok) throw new Error(plan.error.map(formatProblem).join('; '));
    return plan.value;
  },
};
