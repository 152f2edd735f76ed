import { Client, type Room } from '@colyseus/sdk';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSharedTable } from '../../../client/net/index.ts';
import { DEAR_RATES } from '../../../server/rooms/index.ts';
import { dearFrame } from '../../support/dearFrame.ts';
import { createTabStore, startTestServer, until, type TestServer } from '../../support/tableServer.ts';

let server: TestServer;

beforeAll(async () => {
  server = await startTestServer();
});
afterAll(() => server.close());

async function openRoom(): Promise<Room> {
  const room: Room = await new Client(server.origin).create('table', { name: 'Eve' });
  room.reconnection.enabled = false;
  room.onMessage('*', () => undefined);
  return room;
}

/** Code with which the server cut the line. */
function cut(room: Room): Promise<number> {
  return new Promise((resolve) => room.onLeave(resolve));
}

describe('a message that is costly to decode', () => {
  it('cuts the line that sent it, undecoded, while another table flies on', async () => {
    const opened = await openSharedTable({ origin: server.origin, store: createTabStore(), name: 'Ada' });
    if (!opened.ok) throw new Error(opened.error.reason);
    const link = opened.value;
    await link.command({ kind: 'takeSeat', seat: 'flying' });
    await link.command({ kind: 'begin' });
    const spoilers = await Promise.all(Array.from({ length: 6 }, openRoom));
    const cuts = spoilers.map(cut);
    for (const room of spoilers) for (let i = 0; i < 20; i += 1) room.connection.send(dearFrame());
    expect(await Promise.all(cuts)).toEqual(spoilers.map(() => 1008));
    // decoded, each of them is told in the log
    expect(server.reports.filter((line) => !line.includes('This machine is too slow'))).toEqual([]);
    const { tick } = link.view?.flight ?? { tick: 0 };
    await until('the other table to fly on', () => (link.view?.flight.tick ?? 0) > tick);
    expect(link.state).toBe('connected');
    link.leave();
  });

  it.each([
    ['a text of no meaning', [13, 0xa1, 97, 0xc1]],
    ['a value that ends beyond its frame', [13, 0xa1, 97, 0xda, 0xff, 0xff]],
    ['more after its end', [13, 0xa1, 97, 0xc0, 0xc0]],
    ['a list of very many', [13, 0xa1, 97, 0xdc, 0xff, 0xff, ...Array.from({ length: 500 }, () => 0xc0)]],
    ['a date', [13, 0xa1, 97, 0xd6, 0xff, 0, 0, 0, 0]],
    ['a kind of frame that no client of ours sends', [17, 0xa1, 97]],
    ['nothing', []],
  ])('and so does %s', async (_what, bytes) => {
    const room = await openRoom();
    const ended = cut(room);
    room.connection.send(new Uint8Array(bytes));
    expect(await ended).toBe(1008);
  });
});

describe('asking for what is costly to answer', () => {
  it('is refused in words past a few, and what is cheap is still carried out', async () => {
    const room = await openRoom();
    const answers = await Promise.all(
      Array.from({ length: DEAR_RATES.ofMember.burst + 6 }, () =>
        room.request<unknown, { error?: { code: string } }>('command', { kind: 'again' }),
      ),
    );
    const codes = answers.map(({ error }) => error?.code);
    expect(codes.slice(0, DEAR_RATES.ofMember.burst)).not.toContain('table/too-fast');
    expect(codes.at(-1)).toBe('table/too-fast');
    expect(await room.request('command', { kind: 'takeSeat', seat: 'lead' })).toMatchObject({ ok: true });
    await room.leave();
  });
});
