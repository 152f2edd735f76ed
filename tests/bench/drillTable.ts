import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { askTable, joinTable, openKeptTable, stepKeptTable, type KeptTable } from '../../engine/record/index.ts';
import { playedModel, SEATS, viewTable, type TableModel } from '../../engine/table/index.ts';
import { DRILLS, layDrill } from '../../levels/index.ts';
import { STEPS_PER_PATCH } from '../../server/rooms/index.ts';
import { tableShape } from '../../server/schema/tableShape.ts';
import { openPaperWire } from '../support/paperWire.ts';
import type { BenchRow } from './row.ts';

const TICKS_PER_SECOND = 60;
const RUNS = 3;
const TABLES = 40;

/**
 * What a drill costs with a facilitator and five people at the seats, of whom nobody does anything: a tick of the whole table with what is shown and encoded for
 * all six, against the steps of its played world in the same run; what each is sent; and what a table keeps in memory.
 */
export function benchDrillTable(): readonly BenchRow[] {
  const runs = Array.from({ length: RUNS }, flyDrill);
  const best = runs.reduce((one, other) => (other.table < one.table ? other : one));
  const world = { reference: 'the steps of its world', unit: 'us', referenceValue: best.world };
  const whole = { reference: 'every reading whole, as JSON', unit: 'B/s', referenceValue: best.json };
  return [
    { measure: 'a drill for six, a tick without its world', value: best.table - best.world, ...world },
    { measure: 'of that the table itself, stand-ins, sensors and talk', value: best.step - best.world, ...world },
    { measure: 'sent to the facilitator of a drill', value: best.toFacilitator, ...whole },
    { measure: 'sent to the seat that gets most', value: best.toSeat, ...whole },
    { measure: 'kept in memory for a table in mid-drill', ...memory() },
  ];
}

interface Spent {
  /** A tick [us]: all of it, the step of the table, the world in it. */
  readonly table: number;
  readonly step: number;
  readonly world: number;
  /** [B/s] */
  readonly toFacilitator: number;
  readonly toSeat: number;
  readonly json: number;
}

function flyDrill(): Spent {
  let world = 0;
  const timed: TableModel = {
    ...playedModel,
    createDescent(plan) {
      const descent = playedModel.createDescent(plan);
      return {
        ...descent,
        step(input, valves) {
          const begun = performance.now();
          const events = descent.step(input, valves);
          world += performance.now() - begun;
          return events;
        },
      };
    },
  };
  const kept = openDrill(timed);
  const members = kept.table.state.members.map(({ id }) => id);
  const wire = openPaperWire(tableShape);
  for (const id of members) wire.join(viewTable(kept.table, id));
  const bytes = members.map(() => 0);
  let [ticks, all, step, json] = [0, 0, 0, 0];
  while (kept.table.state.stage === 'descending') {
    const begun = performance.now();
    stepKeptTable(kept);
    step += performance.now() - begun;
    ticks += 1;
    if (ticks % STEPS_PER_PATCH === 0 && kept.table.state.stage === 'descending') {
      for (const [at, id] of members.entries()) wire.write(at, viewTable(kept.table, id));
      for (const [at, size] of wire.send().entries()) bytes[at] = (bytes[at] ?? 0) + size;
      all += performance.now() - begun;
      json += JSON.stringify(viewTable(kept.table, 'm1')).length;
    } else all += performance.now() - begun;
  }
  const each = (ms: number) => (1000 * ms) / ticks;
  const seconds = ticks / TICKS_PER_SECOND;
  const [facilitator = 0, ...seats] = bytes;
  return {
    table: each(all),
    step: each(step),
    world: each(world),
    toFacilitator: facilitator / seconds,
    toSeat: Math.max(...seats) / seconds,
    json: json / seconds,
  };
}

/** A facilitator and five at the seats, begun. */
function openDrill(model: TableModel): KeptTable {
  const [, drill] = DRILLS;
  const plan = drill && layDrill(drill);
  if (plan?.ok !== true) throw new Error('no drill to measure');
  const kept = openKeptTable({ plan: plan.value, model, write: () => undefined });
  joinTable(kept, 'Fay', 'facilitator');
  for (const [at, seat] of SEATS.entries()) {
    joinTable(kept, seat);
    // nobody at Flying, so that it comes down as the stand-in flies it
    if (seat !== 'flying') askTable(kept, `m${at + 2}`, { kind: 'takeSeat', seat });
  }
  askTable(kept, 'm1', { kind: 'begin' });
  return kept;
}

/** Heap that so many tables take after ten seconds of their descent, one of them, against its descent alone [kB]. */
function memory(): Pick<BenchRow, 'value' | 'unit' | 'reference' | 'referenceValue'> {
  const table = heapOf(() => {
    const kept = openDrill(playedModel);
    for (let tick = 0; tick < 10 * TICKS_PER_SECOND; tick += 1) stepKeptTable(kept);
    return kept;
  });
  const { plan } = openDrill(playedModel).table;
  const world = heapOf(() => playedModel.createDescent(plan));
  return { value: table, unit: 'kB', reference: 'its played world alone', referenceValue: world };
}

/** Takes away what nobody holds. */
function collect(): void {
  setFlagsFromString('--expose_gc');
  runInNewContext('gc()');
}

/** What is held after making something so many times, of each [kB]. */
function heapOf(make: () => unknown): number {
  const held: unknown[] = [];
  collect();
  const before = process.memoryUsage().heapUsed;
  for (let i = 0; i < TABLES; i += 1) held.push(make());
  collect();
  const after = process.memoryUsage().heapUsed;
  if (held.length !== TABLES) throw new Error('nothing was held');
  return (after - before) / TABLES / 1024;
}
