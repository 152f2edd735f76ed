import type { Drill } from '../../../engine/drill/index.ts';
import { formatProblem } from '../../../engine/result.ts';
import {
  applyEntry,
  createTable,
  playedModel,
  stepTable,
  viewTable,
  type InstrumentPlan,
  type Scorecard,
  type Table,
} from '../../../engine/table/index.ts';
import { choiceOfDrill, layDrill } from '../../../levels/index.ts';

/** A drill left to the stand-ins at every seat, at its end: the facilitator begins it, and touches nothing. */
export function flyDrill(drill: Drill, seed: number, standIns: InstrumentPlan['standIns']): Table {
  const plan = layDrill(drill, choiceOfDrill(drill, seed));
  if (!plan.ok) throw new Error(plan.error.map(formatProblem).join('; '));
  const { instruments } = plan.value;
  if (instruments === undefined) throw new Error('a drill is flown by instruments');
  const table = createTable({ plan: { ...plan.value, instruments: { ...instruments, standIns } }, model: playedModel });
  for (const content of [{ kind: 'joined', name: 'Wren', role: 'facilitator' }, { kind: 'begin' }] as const)
    applyEntry(table, { tick: 0, member: 'm1', content });
  while (table.state.stage === 'descending') stepTable(table);
  return table;
}

/** How it is judged: a search by simulation, of some tenths of a second. */
export function cardOf(table: Table): Scorecard {
  const { scorecard } = viewTable(table, 'm1');
  if (scorecard === undefined) throw new Error('a descent that has ended has a scorecard');
  return scorecard;
}
