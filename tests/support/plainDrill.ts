import { DRILL_FORMAT, type Drill, type EventRow } from '../../engine/drill/index.ts';
import { createTable, SEATS, stepTable, type Table } from '../../engine/table/index.ts';
import { askJoin, commandTable, joinTable } from './askTable.ts';
import { plainModel, plainPlan } from './plainTable.ts';

/** A row of an event list, but for what it does and when. */
export const ROW: Omit<EventRow, 'id' | 'trigger' | 'effects'> = {
  title: 'Something happens',
  kind: 'contextual',
  visible: 'a card',
  groundTruth: 'it is so',
  objective: 'one',
  responses: [{ id: 'shut', seat: 'propellant', text: 'Shut the line.', within: 5, seen: { by: 'lineShut' } }],
};
/** Something that fails. */
export const LEAK = { source: 'tanks', kind: 'leak', parameters: { flow: 1 } } as const;

/** A drill of these rows, over the plain plan. */
export function drillOf(events: readonly EventRow[]): Drill {
  return {
    format: DRILL_FORMAT,
    id: 'try',
    title: 'Try',
    summary: 'A try.',
    level: 1,
    minutes: 5,
    brief: ['Land.'],
    objectives: [{ id: 'one', text: 'Land.' }],
    ruleCard: [],
    plan: { ...plainPlan.choice, mode: 'by hand' },
    profile: [{ above: 0, rate: 1 }],
    truth: { steeperDeg: 0, faults: [] },
    courses: [],
    events,
    questions: [],
  };
}

/** m1 facilitates; m2 to m6 sit at the seats in their order; m7 is the room screen. The lander falls half a meter a tick from 100 m. */
export function setDrill(events: readonly EventRow[]): Table {
  const table = createTable({ plan: { ...plainPlan, drill: drillOf(events) }, model: plainModel });
  askJoin(table, 'Fay', 'facilitator');
  SEATS.forEach((seat, i) => {
    joinTable(table, { name: seat });
    commandTable(table, `m${i + 2}`, { kind: 'takeSeat', seat });
  });
  askJoin(table, 'Wall', 'room screen');
  commandTable(table, 'm1', { kind: 'begin' });
  commandTable(table, 'm3', { kind: 'setThrust', percent: 50 });
  return table;
}

export function stepBy(table: Table, ticks: number): void {
  for (let i = 0; i < ticks; i += 1) stepTable(table);
}
