import {
  askTable,
  headerOf,
  joinTable,
  openKeptTable,
  stepKeptTable,
  type RecordLine,
  type TableRecord,
} from '../../engine/record/index.ts';
import { playedModel, type Command, type Seat, type Table, type TablePlan } from '../../engine/table/index.ts';

/** What one person asks for, by tick of the descent. */
export type Script = Readonly<Record<number, readonly Command[]>>;

export interface Flown {
  readonly record: TableRecord;
  readonly table: Table;
  /** Height of the lowest foot [m] and horizontal speed [m/s] at each tick of the last descent. */
  readonly heights: readonly number[];
  readonly speeds: readonly number[];
}

/** One person at a seat flies a plan to its end, once for each script; after `leaveAt` ticks of the last descent they are gone. A hold lasts so many ticks. */
export function flyTroubled(
  plan: TablePlan,
  seat: Seat,
  scripts: readonly Script[],
  leaveAt = Infinity,
  heldTicks = 1,
): Flown {
  const lines: RecordLine[] = [];
  const kept = openKeptTable({ plan, model: playedModel, write: (line) => lines.push(line) });
  const { table } = kept;
  const ask = (command: Command) => {
    const asked = askTable(kept, 'm1', command);
    if (!asked.ok) throw new Error(asked.error.reason);
  };
  joinTable(kept, 'Ada');
  ask({ kind: 'takeSeat', seat });
  let [heights, speeds]: [number[], number[]] = [[], []];
  for (const [index, script] of scripts.entries()) {
    ask({ kind: index === 0 ? 'begin' : 'again' });
    [heights, speeds] = [[], []];
    while (table.state.stage === 'descending') {
      const { flight } = table.run;
      if (heights.length === flight.tick) {
        heights.push(flight.height);
        speeds.push(flight.vx);
        if (index === scripts.length - 1 && flight.tick === leaveAt) ask({ kind: 'leaveSeat' });
        else if (flight.tick < leaveAt) for (const command of script[flight.tick] ?? []) ask(command);
      } else if (table.state.held) {
        for (let tick = 1; tick < heldTicks; tick += 1) stepKeptTable(kept);
        ask({ kind: 'resume' });
      }
      stepKeptTable(kept);
    }
    heights.push(table.run.flight.height);
    speeds.push(table.run.flight.vx);
  }
  return { record: { header: headerOf(plan), lines }, table, heights, speeds };
}
