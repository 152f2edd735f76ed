import { askTable, joinTable, openKeptTable, stepKeptTable } from '../../engine/record/index.ts';
import { playedModel, SEATS } from '../../engine/table/index.ts';
import { choiceOfDrill, DRILLS, layPlan } from '../../levels/index.ts';
import { account, measuredTicker } from './measuredTicker.ts';

/** So many tables of five as `tableServer.ts` holds, under the same ticker in a process of its own, with no network and nobody who is shown anything; see manyTables.ts. */

const [, , tables = '1'] = process.argv;
const [, drill] = DRILLS;
if (drill === undefined) throw new Error('no drill to measure');
for (let table = 0; table < Number(tables); table += 1) {
  const plan = layPlan(choiceOfDrill(drill, 1 + table));
  if (!plan.ok) throw new Error('no plan to measure');
  const kept = openKeptTable({ plan: plan.value, model: playedModel, write: () => undefined });
  for (const seat of SEATS) {
    const joined = joinTable(kept, seat);
    if (joined.ok) askTable(kept, joined.value, { kind: 'takeSeat', seat });
  }
  const begun = askTable(kept, 'm1', { kind: 'begin' });
  if (!begun.ok) throw new Error(begun.error.reason);
  measuredTicker.add(() => void stepKeptTable(kept));
}
account('ready');
