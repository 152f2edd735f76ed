import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { headerOf, type RecordLine } from '../../../engine/record/index.ts';
import { JOURNAL_FILE, openJournal, type Journal } from '../../../server/storage/index.ts';
import { flyTroubled } from '../../support/flyTroubled.ts';
import { laid } from '../../support/planChoice.ts';
import { callJson, callKilter, type Ran } from './runKilter.ts';

const DAY_MS = 24 * 3600 * 1000;
const PLAN = laid({ start: 'low', seed: 2, sensorTrouble: 'seeded' });
const { record } = flyTroubled(PLAN, 'lead', [{}]);

let folder: string;
let server: Journal;
let nowMs: number;

/** A server that runs: it has ended the table HKTVRQ, whose people were Ada and nobody else, and has BCDFGH open. */
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'kilter-records-'));
  nowMs = Date.UTC(2030, 0, 1, 12);
  server = openJournal({ folder, report: (line) => expect.fail(line), now: () => nowMs });
  const ended = server.open('HKTVRQ', headerOf(PLAN));
  for (const line of record.lines) ended.write(line);
  ended.keepPlace('m1', 'a way back');
  ended.end();
  server.open('BCDFGH', headerOf(PLAN)).write(record.lines[0] as RecordLine);
});

afterEach(() => {
  server.close();
  rmSync(folder, { recursive: true, force: true });
});

function records(...args: readonly string[]): Promise<Ran> {
  return callKilter(['records', ...args, '--records', folder]);
}

async function listed(): Promise<readonly Record<string, unknown>[]> {
  const { records: found } = (await callJson(['records', '--records', folder])) as {
    records: Record<string, unknown>[];
  };
  return found.toSorted((a, b) => String(a['code']).localeCompare(String(b['code'])));
}

/** What of the record stands in any file of the folder. */
function wordsInFiles(): readonly string[] {
  const texts = readdirSync(folder).map((file) => readFileSync(path.join(folder, file)));
  return ['"name":"Ada"', '"kind":"begin"', 'HKTVRQ'].filter((word) => texts.some((text) => text.includes(word)));
}

describe('kilter records, beside a server that runs', () => {
  it('lists what is kept, with what may be done with it', async () => {
    expect(await listed()).toMatchObject([
      { code: 'BCDFGH', isOpen: true, isKept: false, lines: 1, openedMs: nowMs },
      { code: 'HKTVRQ', isOpen: false, isKept: false, lines: record.lines.length },
    ]);
    const { out } = await records('list');
    expect(out).toMatch(/HKT VRQ +ended +expires +2030-01-01 12:00 +2030-01-01 12:00 +\d+ +[a-z\d]{12}/);
    expect(out).toMatch(/BCD FGH +open +expires/);
  });

  it('keeps a record, which then does not expire, until it is kept no longer', async () => {
    expect(await records('keep', 'hkt vrq')).toMatchObject({ status: 0, err: '' });
    expect(await listed()).toMatchObject([{ isKept: false }, { isKept: true }]);
    nowMs += 31 * DAY_MS;
    expect(server.expire(30 * DAY_MS)).toBe(0);
    expect(await records('unkeep', 'HKTVRQ')).toMatchObject({ status: 0 });
    expect(server.expire(30 * DAY_MS)).toBe(1);
    expect(await listed()).toMatchObject([{ code: 'BCDFGH' }]);
  });

  it('deletes a record now: name and way back are in no file any more', async () => {
    expect(wordsInFiles()).toHaveLength(3);
    expect((await records('delete', 'HKTVRQ')).out).toMatch(/^HKT VRQ \([a-z\d]{12}\) is deleted$/m);
    expect(await listed()).toMatchObject([{ code: 'BCDFGH' }]);
    expect(wordsInFiles()).toEqual([]);
    // and the server writes on
    server.open('JKLMNP', headerOf(PLAN)).write(record.lines[0] as RecordLine);
    expect(await listed()).toHaveLength(2);
  });

  it('refuses to delete a record whose table is open, until its server is gone', async () => {
    const refused = await records('delete', 'BCDFGH');
    expect(refused).toMatchObject({ status: 2, out: '' });
    expect(refused.err).toMatch(
      /the table of BCD FGH \([a-z\d]{12}\) is open on the server that runs: let everybody leave/,
    );
    expect(await listed()).toHaveLength(2);
    server.close();
    expect(await records('delete', 'BCDFGH')).toMatchObject({ status: 0 });
    expect(await listed()).toMatchObject([{ code: 'HKTVRQ' }]);
    server = openJournal({ folder, report: (line) => expect.fail(line) });
    expect(server.unfinished()).toEqual([]);
  });

  it('exports a record that kilter replay plays again without a difference', async () => {
    const file = path.join(folder, 'flight.jsonl');
    expect((await records('export', 'HKTVRQ', '--out', file)).status).toBe(0);
    const replayed = await callKilter(['replay', file]);
    expect(replayed.out).toMatch(/1 descent, .* then at rest\nevery mark is as it was recorded/);
    expect(replayed.status).toBe(0);
    const open = path.join(folder, 'open.jsonl');
    expect((await records('export', 'BCDFGH', '--out', open)).out).toMatch(/its table was not ended/);
  });
});

describe('kilter records', () => {
  it.each([
    [['keep'], /expected the code of a table, or the id of a record, to keep/],
    [['delete', 'XXXXXX'], /no record 'XXXXXX'/],
    [['export', 'HKTVRQ'], /expected --out with export/],
    [['keep', 'HKTVRQ', '--out', 'x'], /expected --out with export/],
    [['burn', 'HKTVRQ'], /Allowed choices are list, keep, unkeep, delete, export/],
    [['export', 'HKTVRQ', '--out', '/no/such/folder/x'], /'\/no\/such\/folder\/x' cannot be written/],
  ])('refuses %j in a line', async (args, words) => {
    const ran = await records(...args);
    expect(ran).toMatchObject({ status: 2, out: '' });
    expect(ran.err).toMatch(words);
    expect(await listed()).toHaveLength(2);
  });

  it('asks for the id where tables had the same code', async () => {
    server.open('HKTVRQ', headerOf(PLAN)).end();
    const { status, err } = await records('keep', 'HKTVRQ');
    expect(status).toBe(2);
    const [, ids = ''] = /name one by its id: ([a-z\d]{12}, [a-z\d]{12})/.exec(err) ?? [];
    expect((await records('keep', ids.split(', ')[0] ?? '')).status).toBe(0);
    expect((await listed()).filter(({ isKept }) => isKept === true)).toHaveLength(1);
  });

  it('says that nothing is kept yet, and that a file is no database', async () => {
    const other = mkdtempSync(path.join(tmpdir(), 'kilter-none-'));
    expect((await callKilter(['records', '--records', other])).out).toMatch(/^no records are kept there yet/);
    expect((await callKilter(['records', '--records', 'none'])).err).toMatch(/no records are kept/);
    writeFileSync(path.join(other, JOURNAL_FILE), 'bread and milk '.repeat(100));
    expect((await callKilter(['records', '--records', other])).err).toMatch(/file is not a database/);
    rmSync(other, { recursive: true });
  });
});
