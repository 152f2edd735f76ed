import { request } from 'node:http';
import { createConnection } from 'node:net';
import type { Duplex } from 'node:stream';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { joinSharedTable, openSharedTable, type TableLink } from '../../../client/net/index.ts';
import { PLACES_PER_ADDRESS } from '../../../server/rooms/index.ts';
import {
  createHandTicker,
  createTabStore,
  startTestServer,
  until,
  type TestServer,
} from '../../support/tableServer.ts';
import { openRelay, type Relay } from '../../support/throughProxy.ts';

const TABLES = 3;
const LINES = 20;

let server: TestServer;
/** The same server as a machine of another address reaches it. */
let elsewhere: Relay;
const ticker = createHandTicker();
const links: TableLink[] = [];

beforeAll(async () => {
  const limits = {
    KILTER_TABLES_PER_ADDRESS: `${TABLES}`,
    KILTER_LINES_PER_ADDRESS: `${LINES}`,
    KILTER_IDLE_MINUTES: '1',
  };
  server = await startTestServer({ ticker }, { KILTER_MOST_TABLES: '5', ...limits });
  elsewhere = await openRelay(server.port, undefined, '127.0.0.2');
});
afterEach(async () => {
  for (const link of links.splice(0)) link.leave();
  // past the time for which a table waits for its first member
  await until('all tables to go', () => {
    ticker.turn(601);
    return tables === 0;
  });
});
afterAll(async () => {
  await elsewhere.close();
  await server.close();
});

/** Tables with somebody at them; looked at anew each time it is asked for. */
let tables = 0;
const look = setInterval(() => void countTables().catch(() => undefined), 20);
afterAll(() => clearInterval(look));

async function countTables(): Promise<void> {
  const health = (await (await fetch(`${server.origin}/api/health`)).json()) as { tables: number };
  tables = health.tables;
}

/** A request for a table that nobody ever joins; its status. */
async function askForTable(origin: string): Promise<number> {
  const answer = await fetch(`${origin}/matchmake/create/table`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'Eve' }),
  });
  return answer.status;
}

async function open(origin: string, name: string): Promise<TableLink> {
  const opened = await openSharedTable({ origin, store: createTabStore(), name });
  if (!opened.ok) throw new Error(opened.error.reason);
  links.push(opened.value);
  return opened.value;
}

describe('one address', () => {
  it('gets so many tables and no more, joined or not, while others open theirs', async () => {
    const statuses = [];
    for (let i = 0; i < 30; i += 1) statuses.push(await askForTable(server.origin));
    expect(statuses).toEqual([...Array.from({ length: TABLES }, () => 200), ...Array.from({ length: 27 }, () => 429)]);
    // what nobody has joined takes nothing from anybody
    await countTables();
    expect(tables).toBe(0);
    await open(elsewhere.origin, 'Ada');
    await countTables();
    expect(tables).toBe(1);
  });

  it('that opened no table fills none', async () => {
    const ada = await open(server.origin, 'Ada');
    const join = (origin: string) =>
      joinSharedTable({ origin, store: createTabStore(), name: 'Eve', code: ada.code ?? '' });
    for (let i = 0; i < PLACES_PER_ADDRESS.elsewhere; i += 1) {
      const joined = await join(elsewhere.origin);
      if (!joined.ok) throw new Error(joined.error.reason);
      links.push(joined.value);
    }
    const onemore = await join(elsewhere.origin);
    expect(onemore.ok ? '' : onemore.error.reason).toContain('Too many people joined this table from your network.');
    const near = await join(server.origin);
    expect(near.ok).toBe(true);
    if (near.ok) links.push(near.value);
  });

  it('holds so many lines and no more, and others have theirs', async () => {
    const upgrade = (from: string) =>
      new Promise<number>((resolve, reject) => {
        const headers = {
          connection: 'Upgrade',
          upgrade: 'websocket',
          'sec-websocket-version': '13',
          'sec-websocket-key': 'dGhlIHNhbXBsZSBub25jZQ==',
        };
        const asked = request({ host: '127.0.0.1', port: server.port, localAddress: from, headers, path: '/' });
        asked.on('upgrade', (_answer, socket) => {
          sockets.push(socket);
          resolve(101);
        });
        asked.on('response', (answer) => resolve(answer.statusCode ?? 0)).on('error', reject);
        asked.end();
      });
    const sockets: Duplex[] = [];
    const statuses = await Promise.all(Array.from({ length: LINES + 5 }, () => upgrade('127.0.0.3')));
    expect(statuses.filter((status) => status === 101)).toHaveLength(LINES);
    expect(statuses.filter((status) => status === 429)).toHaveLength(5);
    expect(await upgrade('127.0.0.4')).toBe(101);
    for (const socket of sockets) socket.destroy();
  });

  it('holds so many sockets that say nothing, and others have theirs', async () => {
    const closed: boolean[] = [];
    const sockets = Array.from({ length: LINES + 70 }, () => {
      const socket = createConnection({ port: server.port, host: '127.0.0.1', localAddress: '127.0.0.5' });
      socket.on('error', () => undefined).on('close', () => closed.push(true));
      return socket;
    });
    await until('what is too many to be closed', () => closed.length >= 10);
    expect((await open(elsewhere.origin, 'Ada')).state).toBe('connected');
    for (const socket of sockets) socket.destroy();
  });
});

describe('a table', () => {
  it('at which nobody does anything for the stated time is closed, and its members are told', async () => {
    const ada = await open(server.origin, 'Ada');
    ticker.turn(3500);
    await ada.command({ kind: 'takeSeat', seat: 'lead' });
    ticker.turn(3500);
    expect(ada.state).toBe('connected');
    ticker.turn(200);
    await until('the table to be closed', () => ada.state === 'closed');
    expect(ada.closedBecause).toContain('Nobody did anything');
  });
});
