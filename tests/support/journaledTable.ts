import {
  askTable,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  resumeKeptTable,
  stepKeptTable,
} from '../../engine/record/index.ts';
import type { KeptTable } from '../../engine/record/index.ts';
import { playedModel, type Command, type TablePlan } from '../../engine/table/index.ts';
import { firstLanding } from '../../levels/index.ts';
import { openJournal } from '../../server/storage/index.ts';

/**
 * A table in a process that may be killed at any moment: its journal is in the folder given, and what it does follows from its tick alone. Started again
 * on the same folder it goes on. Says the hash of its last mark, and exits, after two descents.
 *
 *     node tests/support/journaledTable.ts FOLDER [milliseconds a tick]
 */
const [folder = '', pace = '0'] = process.argv.slice(2);
const PLAN: TablePlan = firstLanding(3);
const END = 5000;
const CODE = 'HKTVRQ';

/** What comes to the table at a tick: a press or two every few ticks, by a little arithmetic of the tick. */
function commandAt(tick: number): Command | undefined {
  if (tick === 2600) return { kind: 'again' };
  const chance = (tick * 2654435761) % 4294967296;
  if (chance % 7 !== 0) return undefined;
  return (chance >>> 8) % 2 === 0
    ? { kind: 'setThrust', percent: 28 + ((chance >>> 9) % 13) }
    : { kind: 'setTilt', degrees: ((chance >>> 9) % 13) - 6 };
}

/** From where the journal ends. */
function takeUp(): KeptTable {
  const journal = openJournal({ folder, report: (line) => console.error(line) });
  const [unfinished] = journal.unfinished();
  if (unfinished?.record !== undefined) {
    const write = unfinished.journal.write.bind(unfinished.journal);
    const resumed = resumeKeptTable(unfinished.record, { plan: PLAN, model: playedModel, write });
    if (resumed.ok) return resumed.value;
    throw new Error(JSON.stringify(resumed.error));
  }
  const table = journal.open(CODE, headerOf(PLAN));
  return openKeptTable({ plan: PLAN, model: playedModel, write: (line) => table.write(line) });
}

const kept = takeUp();
const { state } = kept.table;
// a process may be killed between two of these as well
if (state.joined === 0) joinTable(kept, 'Ada');
if (state.descents === 0) {
  askTable(kept, 'm1', { kind: 'takeSeat', seat: 'flying' });
  askTable(kept, 'm1', { kind: 'begin' });
}
// from here on it may be killed in mid-descent
console.log('descending');
let entries = 0;
while (state.tick < END) {
  // what stands in the journal for this tick already has been done before the process was killed
  const command = commandAt(state.tick);
  if (command !== undefined && !isDone(command)) {
    if (askTable(kept, 'm1', command).ok) entries += 1;
  }
  stepKeptTable(kept);
  if (Number(pace) > 0 && state.tick % 30 === 0) await new Promise((resolve) => setTimeout(resolve, 30 * Number(pace)));
}
const last = markLine(kept.table);
console.log(JSON.stringify({ hash: last.line === 'mark' ? last.hash : '', descents: state.descents, entries }));

function isDone(command: Command): boolean {
  const { commanded, stage } = state;
  if (stage !== 'descending') return command.kind !== 'again';
  if (command.kind === 'setThrust') return commanded.thrustPercent === command.percent;
  if (command.kind === 'setTilt') return commanded.tiltDeg === command.degrees;
  return command.kind === 'again' && state.descents === 2;
}
