import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { headerOf } from '../../../engine/record/index.ts';
import { openJournal, openRecordShelf } from '../../../server/storage/index.ts';
import { plainPlan } from '../../support/plainTable.ts';
import { startTestServer } from '../../support/tableServer.ts';

const DAY_MS = 24 * 3600 * 1000;

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'kilter-expire-'));
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'Date'] });
});
afterEach(() => {
  vi.useRealTimers();
  rmSync(folder, { recursive: true });
});

function codes(): readonly string[] {
  const shelf = openRecordShelf(folder);
  const found = shelf?.list().map(({ code }) => code);
  shelf?.close();
  return found ?? [];
}

it('a server that runs on deletes each day what has expired by then', async () => {
  const before = openJournal({ folder, report: (line) => expect.fail(line) });
  before.open('HKTVRQ', headerOf(plainPlan)).end();
  before.close();
  const server = await startTestServer({}, { KILTER_RECORDS: folder, KILTER_RECORD_DAYS: '2' });
  expect(codes()).toEqual(['HKTVRQ']);
  vi.advanceTimersByTime(2 * DAY_MS);
  expect(codes()).toEqual(['HKTVRQ']);
  vi.advanceTimersByTime(DAY_MS);
  expect(codes()).toEqual([]);
  await server.close();
  expect(server.reports).toEqual([]);
});
