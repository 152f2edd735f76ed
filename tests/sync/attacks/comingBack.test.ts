import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { checkNetwork } from '../../../client/net/checkNetwork.ts';
import { openSharedTable, type TableLink } from '../../../client/net/index.ts';
import {
  createHandTicker,
  createTabStore,
  startTestServer,
  until,
  type TestServer,
} from '../../support/tableServer.ts';
import { openRelay, type Relay } from '../../support/throughProxy.ts';

let server: TestServer;
let relay: Relay;
let link: TableLink;
const ticker = createHandTicker();

/** A step of coming back may take this long before it is tried anew; a slow machine gets as long again [ms]. */
const NOTICED_MS = 20_000;

beforeAll(async () => {
  server = await startTestServer({ ticker });
});
beforeEach(async () => {
  relay = await openRelay(server.port);
  const opened = await openSharedTable({ origin: relay.origin, store: createTabStore(), name: 'Ada' });
  if (!opened.ok) throw new Error(opened.error.reason);
  link = opened.value;
  await link.command({ kind: 'takeSeat', seat: 'flying' });
});
afterEach(async () => {
  link.leave();
  await relay.close();
});
afterAll(() => server.close());

async function openTables(): Promise<number> {
  const health = (await (await fetch(`${server.origin}/api/health`)).json()) as { tables: number };
  return health.tables;
}

describe('a network that takes in whatever is sent and answers nothing', () => {
  it.each(['all', 'upgrades'] as const)('hangs no way back for longer than one attempt takes: %s', async (which) => {
    relay.swallow(which);
    relay.cut();
    await until('Ada to notice', () => link.state === 'reconnecting');
    // an attempt is under way that nobody will ever answer
    await new Promise((resolve) => setTimeout(resolve, 500));
    relay.accept();
    await until('Ada to be back', () => link.state === 'connected', NOTICED_MS);
    expect(link.view?.you.seat).toBe('flying');
  });
});

describe('the check of the network', () => {
  it('says what goes through and what is blocked', async () => {
    expect(await checkNetwork(`${relay.origin}/`)).toMatchObject({ request: { ok: true }, line: { ok: true } });
    relay.cutUpgrades();
    expect(await checkNetwork(`${relay.origin}/`)).toMatchObject({ request: { ok: true }, line: { ok: false } });
    relay.refuse();
    relay.cut();
    const blocked = { ok: false };
    expect(await checkNetwork(`${relay.origin}/`)).toEqual({ request: blocked, line: blocked, requestLine: blocked });
  });
});

describe('who slept until the place was given up', () => {
  it('is told, in words, as soon as the network answers', async () => {
    relay.swallow('all');
    relay.cut();
    await until('Ada to notice', () => link.state === 'reconnecting');
    while ((await openTables()) > 0) ticker.turn(60 * 60);
    relay.accept();
    await until('Ada to be told', () => link.state === 'closed', NOTICED_MS);
    expect(link.closedBecause).toMatch(/no longer open|given up/);
  });
});
