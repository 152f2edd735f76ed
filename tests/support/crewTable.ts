import { createTable, SEATS, stepTable, type Seat, type Table, type TablePlan } from '../../engine/table/index.ts';
import type { TableModel } from '../../engine/table/index.ts';
import { commandTable, joinTable } from './askTable.ts';
import { plainModel, plainPlan } from './plainTable.ts';

/** The member who sits at a seat of a full crew: m1 at Lead, m2 at Flying, and so on. */
export const AT: Readonly<Record<Seat, string>> = {
  lead: 'm1',
  flying: 'm2',
  sensors: 'm3',
  propellant: 'm4',
  site: 'm5',
};

/** The plain fall from so high that no test sees its end. */
const LONG_FALL: TablePlan = {
  ...plainPlan,
  setup: { ...plainPlan.setup, start: { ...plainPlan.setup.start, y: 1e6 } },
};

/** A descent that has begun, with a person at each of these seats: by default all five, in a plain fall that goes on. */
export function beginCrew({
  seats = SEATS,
  plan = LONG_FALL,
  model = plainModel,
}: { readonly seats?: readonly Seat[]; readonly plan?: TablePlan; readonly model?: TableModel } = {}): Table {
  const table = createTable({ plan, model });
  for (const name of ['Ada', 'Bo', 'Cy', 'Di', 'Ed']) joinTable(table, { name });
  for (const seat of seats) commandTable(table, AT[seat], { kind: 'takeSeat', seat });
  const [first = 'lead'] = seats;
  commandTable(table, AT[first], { kind: 'begin' });
  return table;
}

export function runTable(table: Table, ticks: number): void {
  for (let i = 0; i < ticks; i += 1) stepTable(table);
}
