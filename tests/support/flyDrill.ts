import {
  askTable,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  stepKeptTable,
  type RecordLine,
  type TableRecord,
} from '../../engine/record/index.ts';
import {
  playedModel,
  viewTable,
  type Command,
  type Table,
  type TablePlan,
  type TableView,
} from '../../engine/table/index.ts';
import { layPlan } from '../../levels/index.ts';

interface FlownDrill {
  readonly record: TableRecord;
  readonly plan: TablePlan;
  readonly table: Table;
  /** What Ada at Sensors was shown at each tick of the last descent. */
  readonly shown: ReadonlyMap<number, TableView>;
}

/** By tick of the descent, what Ada asks for at Sensors. */
const SCRIPT: Readonly<Record<number, readonly Command[]>> = {
  300: [{ kind: 'say', to: 'all', text: 'The altimeter looks quiet.' }],
  420: [{ kind: 'judgeSource', source: 'altimeter', judgment: 'rejected' }],
};

/** A descent by instruments whose altimeter falls silent low over the Bench. Fay facilitates, Ada sits at Sensors, stand-ins at the rest; flown twice where `again`. */
export function flyDrill(again = false): FlownDrill {
  const plan = layPlan({
    format: 'kilter-plan/1',
    lander: 'trivet',
    site: 'saddlers-bench',
    world: 'moon',
    seed: 1,
    start: 'low',
    mode: 'by orders',
    pace: 1,
    sensorTrouble: 'seeded',
  });
  if (!plan.ok) throw new Error(JSON.stringify(plan.error));
  const lines: RecordLine[] = [];
  const kept = openKeptTable({ plan: plan.value, model: playedModel, write: (line) => lines.push(line) });
  const { table } = kept;
  const ask = (id: string, command: Command) => {
    const asked = askTable(kept, id, command);
    if (!asked.ok) throw new Error(`${command.kind}: ${asked.error.reason}`);
  };
  joinTable(kept, 'Fay', 'facilitator');
  joinTable(kept, 'Ada');
  ask('m2', { kind: 'takeSeat', seat: 'sensors' });
  ask('m1', { kind: 'begin' });
  const shown = new Map<number, TableView>();
  const fly = () => {
    shown.clear();
    while (table.state.stage === 'descending') {
      const { tick } = table.run.flight;
      for (const command of SCRIPT[tick] ?? []) ask('m2', command);
      stepKeptTable(kept);
      if (table.state.stage === 'descending') shown.set(table.run.flight.tick, viewTable(table, 'm2'));
    }
  };
  fly();
  if (again) {
    ask('m1', { kind: 'again' });
    while (table.state.stage === 'resolved') stepKeptTable(kept);
    fly();
  }
  return {
    record: { header: headerOf(plan.value), lines: [...lines, markLine(table)] },
    plan: plan.value,
    table,
    shown,
  };
}
