import { Client, type Room } from '@colyseus/sdk';
import { playedModel, SEATS, type TableView } from '../../engine/table/index.ts';
import { firstLanding } from '../../levels/index.ts';
import { STEPS_PER_PATCH } from '../../server/rooms/index.ts';
import type { Welcome } from '../../server/messages/index.ts';
import { readPapers, type TablePapers } from '../../server/schema/index.ts';
import { createHandTicker, startTestServer, until } from '../support/tableServer.ts';
import type { BenchRow } from './row.ts';

const TICKS_PER_SECOND = 60;

/** Thrust that holds Trivet on the Moon, about, and its steps [%]. */
const HOVER_PERCENT = 35;
const THRUST_STEP = 5;
const TILT_STEP = 2;
const ENGINE_OFF_BELOW = 0.5;

interface Listener {
  readonly room: Room<unknown, TablePapers>;
  /** Of all messages since the descent began, papers and events alike. */
  bytes: number;
}

/**
 * What a table sends while one descent is flown to rest by a rule that goes by the own paper alone: bytes of the messages,
 * without the frames of the sockets, a second of the descent and a client. Real server, real sockets, the clock in our hand.
 */
export async function benchWireBytes(): Promise<readonly BenchRow[]> {
  return [...(await descend(1)), ...(await descend(SEATS.length))];
}

async function descend(crew: number): Promise<readonly BenchRow[]> {
  const ticker = createHandTicker();
  const server = await startTestServer({ ticker, model: playedModel, plan: () => firstLanding(1) });
  try {
    const listeners = await gather(server.origin, crew);
    for (const listener of listeners) listener.bytes = 0;
    const [pilot] = listeners;
    if (pilot === undefined) throw new Error('a table without anybody');
    await pilot.room.request('command', { kind: 'begin' });
    let whole = 0;
    let view = paperOf(pilot);
    for (; view.flight.outcome === undefined; view = paperOf(pilot)) {
      const before = view.flight.tick;
      ticker.turn(STEPS_PER_PATCH);
      await until('the next reading', () => listeners.every((each) => paperOf(each).flight.tick > before));
      await steer(pilot, paperOf(pilot));
      whole += JSON.stringify(paperOf(pilot)).length;
    }
    const seconds = view.flight.tick / TICKS_PER_SECOND;
    const most = Math.max(...listeners.map(({ bytes }) => bytes));
    return [
      {
        measure: `sent to a client, ${crew} at the table, ${seconds.toFixed(1)} s to '${view.flight.outcome}'`,
        value: most / seconds,
        unit: 'B/s',
        reference: 'every reading whole, as JSON',
        referenceValue: whole / seconds,
      },
    ];
  } finally {
    await server.close();
  }
}

/** A table with everybody seated, Flying first. */
async function gather(origin: string, crew: number): Promise<readonly Listener[]> {
  const seats = [...SEATS].toSorted((a, b) => Number(b === 'flying') - Number(a === 'flying'));
  const listeners: Listener[] = [];
  let code = '';
  for (const seat of seats.slice(0, crew)) {
    const client = new Client(origin);
    const room = await (code === ''
      ? client.create<TablePapers>('table', { name: `${seat} one` })
      : client.join<TablePapers>('table', { code, name: `${seat} one` }));
    room.onMessage('events', () => undefined);
    ({ code } = await new Promise<Welcome>((resolve) => room.onMessage('welcome', resolve)));
    listeners.push(listenTo(room));
    await room.request('command', { kind: 'takeSeat', seat });
  }
  return listeners;
}

/** Counts everything that comes in. */
function listenTo(room: Room<unknown, TablePapers>): Listener {
  const listener: Listener = { room, bytes: 0 };
  const { events } = room.connection;
  const take = events.onmessage;
  Object.assign(events, {
    onmessage(event: { readonly data: ArrayBuffer }) {
      listener.bytes += event.data.byteLength;
      take?.(event);
    },
  });
  return listener;
}

function paperOf({ room }: Listener): TableView {
  const [paper] = room.state.papers.values();
  if (paper === undefined) throw new Error('no paper');
  return readPapers(room.state.common, paper);
}

/** Comes down slower the lower it is, nulls the drift until low, and shuts the engine off at the ground. */
async function steer({ room }: Listener, { flight, commanded }: TableView): Promise<void> {
  const wantedRate = Math.min(4.5, 0.8 + 0.09 * flight.height);
  const wanted = HOVER_PERCENT + 18 * (-flight.vy - wantedRate);
  const isDown = flight.height < ENGINE_OFF_BELOW || flight.contacts.length > 0;
  const percent = isDown ? 0 : rounded(Math.max(0, Math.min(100, wanted)), THRUST_STEP);
  const degrees = flight.height < 6 ? 0 : rounded(Math.max(-14, Math.min(14, 7 * flight.vx)), TILT_STEP);
  if (percent !== commanded.thrustPercent) await room.request('command', { kind: 'setThrust', percent });
  if (degrees !== commanded.tiltDeg) await room.request('command', { kind: 'setTilt', degrees });
}

function rounded(value: number, step: number): number {
  return Math.round(value / step) * step;
}
