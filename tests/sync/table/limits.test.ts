import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSharedTable, type TableLink } from '../../../client/net/index.ts';
import { countAttempts } from '../../support/attempts.ts';
import { createTabStore, startTestServer, until, type TestServer } from '../../support/tableServer.ts';

let server: TestServer;

function open(name: string) {
  return openSharedTable({ origin: server.origin, store: createTabStore(), name });
}

async function openTables(): Promise<number> {
  const answer = await fetch(`${server.origin}/api/health`);
  return ((await answer.json()) as { tables: number }).tables;
}

beforeAll(async () => {
  server = await startTestServer({}, { KILTER_MOST_TABLES: '3' });
});
afterAll(() => server.close());

describe('a server told to open three tables at most', () => {
  it('refuses the fourth in words, and opens it once one is deserted', async () => {
    const links: TableLink[] = [];
    for (const name of ['Ada', 'Bo', 'Cy']) {
      const opened = await open(name);
      if (opened.ok) links.push(opened.value);
    }
    expect(links).toHaveLength(3);
    expect(await openTables()).toBe(3);
    const fourth = await open('Di');
    expect(fourth).toEqual({
      ok: false,
      error: { code: 'table/not-joined', reason: 'All tables of this server are in use. Try again later.' },
    });
    links[0]?.leave();
    let later = await open('Di');
    const startMs = performance.now();
    while (!later.ok && performance.now() - startMs < 3000) later = await open('Di');
    expect(later.ok).toBe(true);
    if (later.ok) links.push(later.value);
    for (const link of links) link.leave();
  });

  it('refuses more attempts from one address than a full class makes, and takes them again after a while', async () => {
    const codes = [];
    const mostNow = countAttempts();
    while (codes.length < mostNow() + 5) {
      const refused = await open('');
      codes.push(refused.ok ? 'opened' : refused.error.reason);
    }
    let last = codes.find((code) => code.includes('Too many attempts from this address.'));
    expect(last).toBeDefined();
    expect(codes[0]).toContain('Give a name');
    await until('an attempt to be free again', () => {
      void open('').then((refused) => (last = refused.ok ? '' : refused.error.reason));
      return last?.includes('Give a name') === true;
    });
    expect(last).toContain('Give a name');
  });
});
