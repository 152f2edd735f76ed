import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { openSharedTable, type TableLink } from '../../../client/net/index.ts';
import { parseRecord, replayRecord } from '../../../engine/record/index.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { openRecordShelf } from '../../../server/storage/index.ts';
import { laid, choiceOf } from '../../support/planChoice.ts';
import {
  createHandTicker,
  createTabStore,
  startTestServer,
  until,
  type TestServer,
} from '../../support/tableServer.ts';

const PLAN = laid({ start: 'low', seed: 5 });

let folder: string;
let server: TestServer;
const ticker = createHandTicker();

beforeEach(() => void (folder = mkdtempSync(path.join(tmpdir(), 'kilter-saved-'))));
afterEach(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

async function open(records: string): Promise<TableLink> {
  server = await startTestServer({ model: playedModel, plan: () => PLAN, ticker }, { KILTER_RECORDS: records });
  const opened = await openSharedTable({ origin: server.origin, name: 'Ada', store: createTabStore() });
  if (!opened.ok) throw new Error(opened.error.reason);
  await opened.value.command({ kind: 'takeSeat', seat: 'lead' });
  return opened.value;
}

async function fly(link: TableLink): Promise<void> {
  await link.command({ kind: 'begin' });
  ticker.turn(60);
  await until('a descent', () => link.view?.stage === 'descending');
}

async function land(link: TableLink): Promise<void> {
  ticker.turn(3000);
  await until('rest', () => link.view?.stage === 'resolved');
}

it('a member saves the record of a shared table at rest, and nobody while it descends', async () => {
  const link = await open(folder);
  await fly(link);
  expect(await link.recordText()).toMatchObject({ ok: false, error: { code: 'table/stage' } });
  await land(link);
  const saved = await link.recordText();
  if (!saved.ok) throw new Error(saved.error.reason);
  const record = parseRecord(saved.value);
  if (!record.ok) throw new Error('not a record');
  const replayed = replayRecord(record.value, { plan: PLAN, model: playedModel });
  expect(replayed).toMatchObject({ ok: true, value: { divergence: undefined } });
  expect(replayed.ok && replayed.value.table.state.stage).toBe('resolved');
  expect(replayed.ok && replayed.value.marks).toBeGreaterThan(10);
});

it('a server that keeps no records says so', async () => {
  const link = await open('none');
  await fly(link);
  await land(link);
  expect(await link.recordText()).toMatchObject({ ok: false, error: { code: 'table/no-record' } });
});

it('a table at which something else was chosen has one record, of what is flown', async () => {
  const link = await open(folder);
  expect(await link.choose?.(choiceOf({ start: 'middle', seed: 5 }))).toMatchObject({ ok: true });
  const shelf = openRecordShelf(folder);
  expect(shelf?.list()).toMatchObject([{ isOpen: true }]);
  shelf?.close();
});
