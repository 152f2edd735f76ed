import { Client, type Room } from '@colyseus/sdk';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseTableCode, type TableView } from '../../../engine/table/index.ts';
import type { Welcome } from '../../../server/messages/index.ts';
import { readPapers, type TablePapers } from '../../../server/schema/index.ts';
import { STEPS_PER_PATCH, STEPS_PER_READING } from '../../../server/rooms/index.ts';
import { createHandTicker, startTestServer, until, type TestServer } from '../../support/tableServer.ts';

let server: TestServer;
const ticker = createHandTicker();

interface Wire {
  readonly room: Room<unknown, TablePapers>;
  readonly welcome: Welcome;
  /** Bytes of state that came after joining. */
  bytes: number;
}

/** A client that looks at everything it is sent. */
async function listen(enter: (client: Client) => Promise<Room<unknown, TablePapers>>): Promise<Wire> {
  const room = await enter(new Client(server.origin));
  const welcome = await new Promise<Welcome>((resolve) => room.onMessage('welcome', resolve));
  const wire: Wire = { room, welcome, bytes: 0 };
  const { events } = room.connection;
  const take = events.onmessage;
  Object.assign(events, {
    onmessage(event: { readonly data: ArrayBuffer }) {
      wire.bytes += event.data.byteLength;
      take?.(event);
    },
  });
  return wire;
}

function papersOf({ room }: Wire): readonly TableView[] {
  return [...room.state.papers.values()].map((own) => readPapers(room.state.common, own));
}

beforeAll(async () => {
  server = await startTestServer({ ticker });
});
afterAll(() => server.close());

const CREW = { role: 'crew', ready: false, runs: false };

describe('what a client is sent', () => {
  it('is its own paper and no other, from joining through other members’ changes to their leaving', async () => {
    const ada = await listen((client) => client.create<TablePapers>('table', { name: 'Ada' }));
    const code = parseTableCode(ada.welcome.code);
    expect(code.ok).toBe(true);
    const bo = await listen((client) => client.join<TablePapers>('table', { code: ada.welcome.code, name: 'Bo' }));
    expect(ada.welcome.resume).not.toBe(bo.welcome.resume);

    const sit = await bo.room.request<unknown, unknown>('command', { kind: 'takeSeat', seat: 'lead' });
    expect(sit).toMatchObject({ ok: true });
    await bo.room.request('command', { kind: 'begin' });
    for (let i = 0; i < 5; i += 1) ticker.turn(3);
    await until('the descent at both', () => [ada, bo].every((wire) => (papersOf(wire)[0]?.flight.tick ?? 0) === 15));
    expect(papersOf(ada).map(({ you }) => you)).toEqual([
      { id: 'm1', name: 'Ada', holds: { thrust: false, tilt: false }, mayTakeSeat: true, decides: false, ...CREW },
    ]);
    expect(papersOf(bo).map(({ you }) => you)).toEqual([
      {
        id: 'm2',
        name: 'Bo',
        seat: 'lead',
        holds: { thrust: false, tilt: false },
        mayTakeSeat: true,
        decides: true,
        ...CREW,
        runs: true,
      },
    ]);

    await bo.room.leave();
    ticker.turn(3);
    await until('the free seat', () => papersOf(ada)[0]?.seats[0]?.name === undefined);
    expect(papersOf(ada)).toHaveLength(1);
    await ada.room.leave();
  });

  it('is a few hundred bytes a reading', async () => {
    const ada = await listen((client) => client.create<TablePapers>('table', { name: 'Ada' }));
    await ada.room.request('command', { kind: 'takeSeat', seat: 'lead' });
    await ada.room.request('command', { kind: 'begin' });
    ticker.turn(3);
    await until('the first reading', () => papersOf(ada)[0]?.flight.tick === 3);
    ada.bytes = 0;
    for (let i = 0; i < 20; i += 1) ticker.turn(3);
    await until('twenty readings', () => papersOf(ada)[0]?.flight.tick === 63);
    expect(ada.bytes).toBeGreaterThan(200);
    expect(ada.bytes / 20).toBeLessThan(300);
    await ada.room.leave();
  });

  it('brings the drawing with each sending, and a seat’s own figures five times a second', async () => {
    const { ada, bo } = await fly('lead', 'propellant');
    await turnTo(STEPS_PER_READING, ada, bo);
    const changes = await changesOverSendings(2 * SENDINGS_PER_READING, ada, bo);
    expect(changes).toEqual([false, false, false, true, false, false, false, true]);
    await leaveAll(ada, bo);
  });

  it('brings whoever runs a drill what is true with each sending', async () => {
    const fay = await listen((client) =>
      client.create<TablePapers>('table', { name: 'Fay', role: 'facilitator' as const }),
    );
    expect(await fay.room.request<unknown, unknown>('command', { kind: 'begin' })).toMatchObject({ ok: true });
    for (let sending = 1; sending <= SENDINGS_PER_READING + 1; sending += 1) {
      await turnTo(sending * STEPS_PER_PATCH, fay);
      expect(papersOf(fay)[0]?.control?.truth.tick).toBe(sending * STEPS_PER_PATCH);
    }
    await leaveAll(fay);
  });

  it('brings them at once where anybody has done anything', async () => {
    const { ada, bo } = await fly('lead', 'propellant');
    await turnTo(STEPS_PER_READING, ada, bo);
    expect(await ada.room.request<unknown, unknown>('command', { kind: 'hold' })).toMatchObject({ ok: true });
    expect(await ada.room.request<unknown, unknown>('command', { kind: 'resume' })).toMatchObject({ ok: true });
    expect(await changesOverSendings(2, ada, bo)).toEqual([true, false]);
    await leaveAll(ada, bo);
  });
});

const SENDINGS_PER_READING = STEPS_PER_READING / STEPS_PER_PATCH;

/** Two at a table of their own that flies. */
async function fly(first: string, second: string): Promise<{ readonly ada: Wire; readonly bo: Wire }> {
  const ada = await listen((client) => client.create<TablePapers>('table', { name: 'Ada' }));
  const bo = await listen((client) => client.join<TablePapers>('table', { code: ada.welcome.code, name: 'Bo' }));
  await ada.room.request('command', { kind: 'takeSeat', seat: first });
  await bo.room.request('command', { kind: 'takeSeat', seat: second });
  await ada.room.request('command', { kind: 'begin' });
  return { ada, bo };
}

/** Lets so many steps pass in one go, until all of these have what came of it. */
async function turnTo(tick: number, ...wires: readonly Wire[]): Promise<void> {
  ticker.turn(tick - (wires[0] === undefined ? 0 : (papersOf(wires[0])[0]?.flight.tick ?? 0)));
  await until(`tick ${tick}`, () => wires.every((wire) => papersOf(wire)[0]?.flight.tick === tick));
}

/** After each of so many sendings, all of which bring the flight to both: whether the own readings of the second are others. */
async function changesOverSendings(sendings: number, ...wires: readonly [Wire, Wire]): Promise<readonly boolean[]> {
  const readings = () => JSON.stringify(papersOf(wires[1])[0]?.propellantReadings);
  const changes: boolean[] = [];
  for (let sending = 0; sending < sendings; sending += 1) {
    const before = readings();
    await turnTo((papersOf(wires[0])[0]?.flight.tick ?? 0) + STEPS_PER_PATCH, ...wires);
    changes.push(readings() !== before);
  }
  return changes;
}

async function leaveAll(...wires: readonly Wire[]): Promise<void> {
  for (const { room } of wires) await room.leave();
}
