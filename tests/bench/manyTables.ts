import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import { Client, type Room } from '@colyseus/sdk';
import { SEATS } from '../../engine/table/index.ts';
import { choiceOfDrill, DRILLS } from '../../levels/index.ts';
import { TICK_MS } from '../../server/rooms/index.ts';
import { flyBareDrill } from './drillTable.ts';
import type { Welcome } from '../../server/messages/index.ts';
import type { BenchRow } from './row.ts';
import type { Spent } from './measuredTicker.ts';

/** Tables that are tried, one number after the other, until ticks come too late. */
const TRIED = [1, 20, 60, 100] as const;
/** After which what is called often is compiled: in the first seconds a tick takes half as much again [ms]. */
const SETTLE_MS = 5000;
const MEASURED_MS = 5000;
/** After so long no more are tried [ms]. */
const LONGEST_MS = 90_000;

/**
 * How many tables of five, all of them flying a drill by instruments, one process holds over real sockets before a tick in a hundred comes a whole tick late: the
 * server by itself, the crowd, which counts bytes and draws nothing, in this process. What all of it costs against the same tables with no network, under the same ticker,
 * and against the bare steps of their worlds one after the other, whose data are always at hand.
 */
export async function benchManyTables(): Promise<readonly BenchRow[]> {
  const physics = flyBareDrill();
  const rows: BenchRow[] = [];
  const begunMs = performance.now();
  let aloneKb = 0;
  for (const tables of TRIED) {
    const alone = await holdAlone(tables);
    const { lateMs, processorUs, residentKb, bytes } = await hold(tables);
    if (tables === 1) aloneKb = residentKb;
    const late = lateMs.toSorted((a, b) => a - b);
    const p99 = late[Math.floor(0.99 * (late.length - 1))] ?? Infinity;
    const perTick = processorUs / late.length;
    const name = `${tables} tables of five`;
    rows.push(
      {
        measure: `${name}: ticks late, 99th percentile`,
        value: p99,
        unit: 'ms',
        reference: 'a tick',
        referenceValue: TICK_MS,
      },
      {
        measure: `${name}: a tick of one, all of the server`,
        value: perTick,
        unit: 'us',
        reference: 'its world, sensors and estimate, bare',
        referenceValue: physics,
      },
      {
        measure: `${name}: the same`,
        value: perTick,
        unit: 'us',
        reference: 'the same tables with no network',
        referenceValue: alone.processorUs / alone.lateMs.length,
      },
      {
        measure: `${name}: sent to a client`,
        value: bytes / (tables * SEATS.length) / (MEASURED_MS / 1000),
        unit: 'B/s',
        reference: 'ticks a second and a table, of 60',
        referenceValue: late.length / tables / (MEASURED_MS / 1000),
      },
    );
    if (tables === TRIED.at(-1) || p99 > TICK_MS || performance.now() - begunMs > LONGEST_MS) {
      rows.push({
        measure: `${name}: memory of one more`,
        value: (residentKb - aloneKb) / Math.max(1, tables - 1),
        unit: 'kB',
        reference: 'a server with one',
        referenceValue: aloneKb,
      });
      break;
    }
  }
  return rows;
}

interface Held extends Spent {
  /** To all clients. */
  readonly bytes: number;
}

async function hold(tables: number): Promise<Held> {
  return inProcess('tableServer.ts', [], async (server, origin) => {
    const counts = { bytes: 0 };
    const rooms: Room[] = [];
    for (let table = 0; table < tables; table += 1) rooms.push(...(await openTable(origin, table)));
    for (const room of rooms) countOnly(room, counts);
    await pause(SETTLE_MS);
    await askSpent(server);
    counts.bytes = 0;
    await pause(MEASURED_MS);
    return { ...(await askSpent(server)), bytes: counts.bytes };
  });
}

/** The same tables with no network. */
async function holdAlone(tables: number): Promise<Spent> {
  return inProcess('loneTables.ts', [String(tables)], async (lone) => {
    await pause(SETTLE_MS);
    await askSpent(lone);
    await pause(MEASURED_MS);
    return askSpent(lone);
  });
}

/** Starts a process, which says when it is ready, and ends it when it is done with. */
async function inProcess<Measured>(
  file: string,
  given: readonly string[],
  measure: (started: ChildProcess, said: string) => Promise<Measured>,
): Promise<Measured> {
  const started = fork(new URL(file, import.meta.url), given);
  try {
    const [said] = (await once(started, 'message')) as [string];
    return await measure(started, said);
  } finally {
    started.kill();
    await once(started, 'exit');
  }
}

/** What a process took since it was asked before. */
export async function askSpent(server: ChildProcess): Promise<Spent> {
  server.send('spent');
  const [spent] = (await once(server, 'message')) as [Spent];
  return spent;
}

/** Five at the seats of a drill that has begun. */
export async function openTable(origin: string, table: number): Promise<readonly Room[]> {
  const [, drill] = DRILLS;
  if (drill === undefined) throw new Error('no drill to measure');
  const address = `10.0.${Math.floor(table / 250)}.${1 + (table % 250)}`;
  const rooms: Room[] = [];
  let code = '';
  for (const seat of SEATS) {
    const client = new Client(origin, { headers: { 'X-Forwarded-For': address } });
    const room = await (code === ''
      ? client.create('table', { name: seat, choice: choiceOfDrill(drill, 1 + table) })
      : client.join('table', { code, name: seat }));
    room.reconnection.enabled = false;
    room.onMessage('*', () => undefined);
    ({ code } = await new Promise<Welcome>((resolve) => room.onMessage('welcome', resolve)));
    await room.request('command', { kind: 'takeSeat', seat });
    rooms.push(room);
  }
  await rooms[0]?.request('command', { kind: 'begin' });
  return rooms;
}

/** From now on what comes is counted and not read, so that the crowd leaves the machine to the server. */
export function countOnly({ connection }: Room, counts: { bytes: number }): void {
  Object.assign(connection.events, {
    onmessage: ({ data }: { readonly data: ArrayBuffer }) => void (counts.bytes += data.byteLength),
  });
}
