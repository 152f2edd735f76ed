import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Client, type Room } from '@colyseus/sdk';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { choiceOf } from '../../support/planChoice.ts';
import type { Welcome } from '../../../server/messages/index.ts';
import type { TablePapers } from '../../../server/schema/index.ts';
import { PLAYED_PARTS } from '../../support/shelvedRun.ts';
import { startTestServer, until, type TestServer } from '../../support/tableServer.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'kilter-run-key-'));
let server: TestServer;
beforeAll(async () => {
  server = await startTestServer(PLAYED_PARTS, { KILTER_RECORDS: folder });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

type Line = Room<unknown, TablePapers>;

async function welcomeOf(room: Line): Promise<Welcome> {
  room.onMessage('events', () => undefined);
  return new Promise((resolve) => room.onMessage('welcome', resolve));
}

async function codesFor(key: string): Promise<readonly string[]> {
  const answer = await fetch(`${server.origin}/api/runs`, { headers: { 'Kilter-Keys': key } });
  return ((await answer.json()) as { runs: { code: string }[] }).runs.map(({ code }) => code);
}

it('the key of a run goes to whoever runs its table and to nobody else, and stays the same when another landing is chosen', async () => {
  const opener: Line = await new Client(server.origin).create<TablePapers>('table', {
    name: 'Fay',
    role: 'facilitator',
  });
  const { code, runKey = '' } = await welcomeOf(opener);
  expect(runKey).toMatch(/^[\w-]{21}$/);
  const bo: Line = await new Client(server.origin).join<TablePapers>('table', { code, name: 'Bo' });
  expect((await welcomeOf(bo)).runKey).toBe(undefined);

  await opener.request('choose', choiceOf({ seed: 9 }));
  expect(await codesFor(runKey)).toEqual([code]);

  let handed: unknown;
  bo.onMessage('runKey', (key) => (handed = key));
  await opener.request('command', { kind: 'handOverTable', member: 'm2' });
  await until('the key of the table handed over', () => handed !== undefined);
  expect(handed).toBe(runKey);
  await opener.leave();
  await bo.leave();
});

it('where nobody facilitates, the key goes to whoever opened the table', async () => {
  const opener: Line = await new Client(server.origin).create<TablePapers>('table', { name: 'Ada' });
  const { code, runKey } = await welcomeOf(opener);
  expect(await codesFor(runKey ?? '')).toEqual([code]);
  const bo: Line = await new Client(server.origin).join<TablePapers>('table', { code, name: 'Bo' });
  expect((await welcomeOf(bo)).runKey).toBe(undefined);
  await opener.leave();
  await bo.leave();
});

it('a table that is open keeps its record to itself: its key lists it without what happened, and neither reads nor changes it', async () => {
  const opener: Line = await new Client(server.origin).create<TablePapers>('table', { name: 'Ada' });
  const { runKey = '' } = await welcomeOf(opener);
  await opener.request('command', { kind: 'takeSeat', seat: 'lead' });
  await opener.request('command', { kind: 'begin' });
  const headers = { 'Kilter-Keys': runKey };
  const listed = await fetch(`${server.origin}/api/runs`, { headers });
  const [run] = ((await listed.json()) as { runs: { id: string; isOpen: boolean; summary?: unknown }[] }).runs;
  expect([run?.isOpen, run?.summary]).toEqual([true, undefined]);
  const read = await fetch(`${server.origin}/api/runs/${run?.id}`, { headers });
  expect(read.status).toBe(409);
  expect(await read.text()).not.toContain('Ada');
  const removed = await fetch(`${server.origin}/api/runs/${run?.id}/delete`, {
    method: 'POST',
    headers: { ...headers, 'Content-Type': 'application/json' },
    body: '{}',
  });
  expect(removed.status).toBe(409);
  await opener.leave();
});
