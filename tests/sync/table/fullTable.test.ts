import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { joinSharedTable, openSharedTable, type TableLink } from '../../../client/net/index.ts';
import { MOST_MEMBERS } from '../../../engine/table/index.ts';
import { PLACES_PER_ADDRESS } from '../../../server/rooms/index.ts';
import { openRelay } from '../../support/throughProxy.ts';
import {
  createHandTicker,
  createTabStore,
  startTestServer,
  until,
  type TestServer,
} from '../../support/tableServer.ts';

let server: TestServer;
const ticker = createHandTicker();
const warnings = vi.spyOn(console, 'warn');

beforeAll(async () => {
  server = await startTestServer({ ticker });
});
afterAll(() => server.close());

describe('a full table', () => {
  it('shows every member the same descent and everybody a place of their own, and takes no more', async () => {
    const links: TableLink[] = [];
    const first = await openSharedTable({ origin: server.origin, store: createTabStore(), name: 'Member 1' });
    if (!first.ok) throw new Error(first.error.reason);
    links.push(first.value);
    const elsewhere = await openRelay(server.port, undefined, '127.0.0.2');
    const join = (name: string, origin: string) =>
      joinSharedTable({ origin, store: createTabStore(), name, code: first.value.code ?? '' });
    while (links.length < MOST_MEMBERS) {
      const origin = links.length < PLACES_PER_ADDRESS.where ? server.origin : elsewhere.origin;
      const joined = await join(`Member ${links.length + 1}`, origin);
      if (!joined.ok) throw new Error(joined.error.reason);
      links.push(joined.value);
    }
    expect(await join('One more', elsewhere.origin)).toMatchObject({
      ok: false,
      error: { code: 'table/not-joined', reason: `This table is full: it takes ${MOST_MEMBERS} people.` },
    });
    await first.value.command({ kind: 'takeSeat', seat: 'flying' });
    await first.value.command({ kind: 'begin' });
    for (let i = 0; i < 10; i += 1) ticker.turn(3);
    await until('everybody to see tick 30', () => links.every((link) => link.view?.flight.tick === 30));
    expect(new Set(links.map((link) => link.view?.you.id)).size).toBe(MOST_MEMBERS);
    expect(new Set(links.map((link) => JSON.stringify(link.view?.flight))).size).toBe(1);
    expect(links.every((link) => link.view?.seats[1]?.name === 'Member 1')).toBe(true);
    for (const link of links) link.leave();
    await elsewhere.close();
    expect(warnings.mock.calls.filter(([text]) => String(text).includes('buffer'))).toEqual([]);
  });
});
