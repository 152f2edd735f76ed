import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { askTable, joinTable, openKeptTable, stepKeptTable, type KeptTable } from '../../engine/record/index.ts';
import { createInstruments, stepInstruments } from '../../engine/table/instruments.ts';
import {
  playedModel,
  SEATS,
  viewCommon,
  viewOwn,
  viewTable,
  viewTruth,
  type Table,
  type TableModel,
} from '../../engine/table/index.ts';
import { DRILLS, layDrill } from '../../levels/index.ts';
import { STEPS_PER_PATCH } from '../../server/rooms/index.ts';
import { createOwnReadings } from '../../server/rooms/ownReadings.ts';
import { commonShape } from '../../server/schema/commonShape.ts';
import { ownShape } from '../../server/schema/ownShape.ts';
import { openPaperWire } from '../support/paperWire.ts';
import type { BenchRow } from './row.ts';

const TICKS_PER_SECOND = 60;
const RUNS = 8;
const TABLES = 40;

/**
 * What a drill costs with a facilitator and five people at the seats, of whom nobody does anything: a tick of the whole table with what is shown and encoded for
 * all six, against the bare steps of its physics (world, sensors, estimate); what each is sent; and what a table keeps in memory.
 */
export function benchDrillTable(): readonly BenchRow[] {
  const flown = noteFlown();
  const runs = Array.from({ length: RUNS }, () => ({
    physics: flyBare(flown),
    step: flyTable(),
    whole: flyTable({ watch: (table) => watchTable(table) }),
  }));
  const least = (of: keyof (typeof runs)[number]) => Math.min(...runs.map((run) => run[of]));
  const [physics, step, whole] = [least('physics'), least('step'), least('whole')];
  const bare = { reference: 'its world, sensors and estimate, bare', unit: 'us', referenceValue: physics };
  const { toFacilitator, toSeat, json } = countBytes();
  const readings = { reference: 'every reading whole, as JSON', unit: 'B/s', referenceValue: json };
  return [
    { measure: 'a drill for six, a tick of all that is not physics', value: whole - physics, ...bare },
    { measure: 'of that the table itself: stand-ins, talk, marks', value: step - physics, ...bare },
    { measure: 'of that what six are shown, made and encoded', value: whole - step, ...bare },
    { measure: 'sent to the facilitator of a drill', value: toFacilitator, ...readings },
    { measure: 'sent to the seat that gets most', value: toSeat, ...readings },
    { measure: 'kept in memory for a table in mid-drill', ...memory() },
  ];
}

/** Called when the table is open; what it returns, at each sending. */
type Watch = (table: Table) => () => void;

/** Flies the drill down, shows it as often as a server does, and returns what a tick costs [us]. */
function flyTable(options: { readonly watch?: Watch; readonly model?: TableModel } = {}): number {
  const kept = openDrill(options.model ?? playedModel);
  const { table } = kept;
  const show = options.watch?.(table);
  let ticks = 0;
  const begun = processorUs();
  while (table.state.stage === 'descending') {
    stepKeptTable(kept);
    ticks += 1;
    // what is searched for once at rest is no part of a tick
    if (ticks % STEPS_PER_PATCH === 0 && table.state.stage === 'descending') show?.();
  }
  return (processorUs() - begun) / ticks;
}

/** What went into the world at each tick. */
type Flown = Parameters<ReturnType<TableModel['createDescent']>['step']>[];

function noteFlown(): Flown {
  const flown: Flown = [];
  const createDescent: TableModel['createDescent'] = (plan) => {
    const descent = playedModel.createDescent(plan);
    const step: typeof descent.step = (...into) => {
      flown.push(into);
      return descent.step(...into);
    };
    return { ...descent, step };
  };
  flyTable({ model: { ...playedModel, createDescent } });
  return flown;
}

/** What a tick of the bare physics of a drill costs, at its best [us]. */
export function flyBareDrill(): number {
  const flown = noteFlown();
  return Math.min(...Array.from({ length: RUNS }, () => flyBare(flown)));
}

/** The same descent without a table: what a tick costs [us]. */
function flyBare(flown: Flown): number {
  const { plan } = openDrill(playedModel).table;
  const descent = playedModel.createDescent(plan);
  const instruments = plan.instruments && createInstruments(plan.instruments, plan.setup, descent.read());
  const begun = processorUs();
  for (const into of flown) {
    descent.step(...into);
    const truth = descent.read();
    if (instruments !== undefined) stepInstruments(instruments, truth, {});
  }
  return (processorUs() - begun) / flown.length;
}

/** Of this process so far: what others do on a busy machine is not in it [us]. */
function processorUs(): number {
  const { user, system } = process.cpuUsage();
  return user + system;
}

/** Makes and encodes what everybody is shown, each part as often as a server does; `take` gets the bytes that would go to each. */
function watchTable(table: Table, take?: (sent: readonly Uint8Array[]) => void): () => void {
  const wire = openPaperWire(commonShape, ownShape);
  wire.writeCommon(viewCommon(table));
  const shown = table.state.members.map(({ id }) => viewOwn(table, id));
  for (const view of shown) wire.join(view);
  const readings = createOwnReadings();
  return () => {
    wire.writeCommon(viewCommon(table));
    const areDue = readings.areDue(table.state, table.state.tick);
    for (const [at, before] of shown.entries()) {
      const view = areDue ? viewOwn(table, `m${at + 1}`) : viewTruth(table, before);
      shown[at] = view;
      wire.write(at, view);
    }
    const sent = wire.encode();
    take?.(sent);
  };
}

/** [B/s] */
function countBytes(): { readonly toFacilitator: number; readonly toSeat: number; readonly json: number } {
  const bytes: number[] = [];
  let [sendings, json] = [0, 0];
  const watch: Watch = (table) =>
    watchTable(table, (sent) => {
      sendings += 1;
      for (const [at, { length }] of sent.entries()) bytes[at] = (bytes[at] ?? 0) + length;
      json += JSON.stringify(viewTable(table, 'm1')).length;
    });
  flyTable({ watch });
  const seconds = (sendings * STEPS_PER_PATCH) / TICKS_PER_SECOND;
  const [facilitator = 0, ...seats] = bytes;
  return { toFacilitator: facilitator / seconds, toSeat: Math.max(...seats) / seconds, json: json / seconds };
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

/** Takes away what nobody holds: in one pass not all of what other measurements left. */
function collect(): void {
  setFlagsFromString('--expose_gc');
  for (let pass = 0; pass < 4; pass++) runInNewContext('gc()');
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
