import {
  askTable,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  stepKeptTable,
  tellLine,
} from '../../engine/record/index.ts';
import type { RecordLine, TableRecord } from '../../engine/record/index.ts';
import { playedModel, viewTable, type Command, type Table } from '../../engine/table/index.ts';
import { firstLanding } from '../../levels/index.ts';

const MOST_TICKS = 20_000;

/** Commands by tick, of a crew that changes seats, lowers the thrust ceiling, holds, loses a line, and is covered by the stand-in in between. */
const SCRIPT: Readonly<Record<number, readonly (readonly [string, Command])[]>> = {
  30: [['m1', { kind: 'setThrust', percent: 35 }]],
  90: [['m1', { kind: 'setTilt', degrees: 8 }]],
  200: [
    ['m2', { kind: 'takeSeat', seat: 'propellant' }],
    ['m2', { kind: 'setCeiling', percent: 22 }],
  ],
  260: [['m2', { kind: 'hold' }]],
  300: [
    ['m1', { kind: 'setTilt', degrees: -3 }],
    ['m1', { kind: 'resume' }],
  ],
  690: [['m2', { kind: 'setCeiling', percent: 100 }]],
  700: [['m2', { kind: 'leaveSeat' }]],
  720: [['m1', { kind: 'leaveSeat' }]],
};

interface FlownRecord {
  readonly record: TableRecord;
  readonly table: Table;
  /** What the second member was shown, each second and at the end. */
  readonly readings: readonly string[];
}

/** A crew of two in a first landing over the ground of this seed, to its end. */
export function flyCrew(seed: number): FlownRecord {
  const plan = firstLanding(seed);
  const lines: RecordLine[] = [];
  const kept = openKeptTable({ plan, model: playedModel, write: (line) => lines.push(line) });
  const { table } = kept;
  const ask = (id: string, command: Command) => {
    const asked = askTable(kept, id, command);
    if (!asked.ok) throw new Error(asked.error.reason);
  };
  joinTable(kept, 'Ada');
  joinTable(kept, 'Bo');
  ask('m1', { kind: 'takeSeat', seat: 'flying' });
  ask('m1', { kind: 'begin' });
  const readings: string[] = [];
  for (let tick = 0; tick < MOST_TICKS && table.state.stage !== 'resolved'; tick += 1) {
    for (const [id, command] of SCRIPT[tick] ?? []) ask(id, command);
    if (tick === 400) tellLine(kept, 'm1', 'dropped');
    if (tick === 650) tellLine(kept, 'm1', 'returned');
    stepKeptTable(kept);
    if (tick % 60 === 0) readings.push(JSON.stringify(viewTable(table, 'm2')));
  }
  readings.push(JSON.stringify(viewTable(table, 'm2')));
  return { record: { header: headerOf(plan), lines: [...lines, markLine(table)] }, table, readings };
}
