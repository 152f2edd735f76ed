import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { headerOf, type RecordLine } from '../../../engine/record/index.ts';
import { JOURNAL_FILE, openJournal, type Journal } from '../../../server/storage/index.ts';
import { plainPlan } from '../../support/plainTable.ts';
import { ROOT } from '../../support/sources.ts';

const DAY_MS = 24 * 3600 * 1000;
const HEADER = headerOf(plainPlan);
const joined = (tick: number): RecordLine => ({
  line: 'entry',
  tick,
  member: `m${tick + 1}`,
  content: { kind: 'joined', name: `Person ${tick}`, role: 'crew' },
});

let folder: string;
let reports: string[];
let journals: Journal[];
let nowMs: number;

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'kilter-journal-'));
  [reports, journals, nowMs] = [[], [], 1_000_000];
});

afterEach(() => {
  for (const journal of journals) journal.close();
  rmSync(folder, { recursive: true, force: true });
});

function open(where = folder, isShared = false): Journal {
  const journal = openJournal({ folder: where, report: (line) => reports.push(line), isShared, now: () => nowMs });
  journals.push(journal);
  return journal;
}

function close(journal: Journal): void {
  journal.close();
  journals = journals.filter((other) => other !== journal);
}

describe('a journal', () => {
  it('gives back the tables that were not ended, with every line and every place, to go on with', () => {
    const first = open();
    const [one, two, over] = ['HKTVRQ', 'BCDFGH', 'JKLMNP'].map((code) => first.open(code, HEADER));
    for (const tick of [0, 1, 2]) one?.write(joined(tick));
    one?.keepPlace('m1', 'token of m1');
    one?.keepPlace('m2', 'token of m2');
    one?.forgetPlace('m1');
    two?.write(joined(0));
    over?.write(joined(0));
    over?.end();
    close(first);

    const second = open();
    const tables = second.unfinished();
    expect(tables.map(({ code }) => code)).toEqual(['HKTVRQ', 'BCDFGH']);
    expect(tables[0]?.record).toEqual({ header: HEADER, lines: [0, 1, 2].map(joined) });
    expect(tables[0]?.places).toEqual([['m2', 'token of m2']]);
    tables[0]?.journal.write(joined(3));
    close(second);
    expect(open().unfinished()[0]?.record?.lines).toEqual([0, 1, 2, 3].map(joined));
    expect(reports).toEqual([]);
  });

  it('says that a table is of another version by having no record of it', () => {
    const first = open();
    first.open('HKTVRQ', { ...HEADER, physics: HEADER.physics + 1 });
    close(first);
    expect(open().unfinished()).toMatchObject([{ code: 'HKTVRQ', record: undefined }]);
  });

  it('deletes records when their time is over, lines and places too, and no other', () => {
    const journal = open();
    const old = journal.open('HKTVRQ', HEADER);
    old.write(joined(0));
    old.keepPlace('m1', 'a way back');
    nowMs += 20 * DAY_MS;
    journal.open('BCDFGH', HEADER).write(joined(0));
    expect(journal.expire(30 * DAY_MS)).toBe(0);
    nowMs += 11 * DAY_MS;
    // a table that is open is used, however long ago its last descent was
    expect(journal.expire(30 * DAY_MS)).toBe(0);
    close(journal);
    const next = open();
    expect(next.expire(30 * DAY_MS)).toBe(1);
    const [left, ...others] = next.unfinished();
    expect([left?.code, others]).toEqual(['BCDFGH', []]);
    left?.journal.end();
    nowMs += 20 * DAY_MS;
    expect(next.expire(30 * DAY_MS)).toBe(1);
    close(next);
    expect(readFileSync(path.join(folder, JOURNAL_FILE)).includes('a way back')).toBe(false);
  });

  it('is of one server alone: a second one on the same folder says so in a line, and keeps nothing', () => {
    const first = open();
    first.open('HKTVRQ', HEADER);
    const second = open();
    expect(reports).toEqual([
      expect.stringMatching(/^Records are not kept, and a restart ends all tables: another server/),
    ]);
    expect([first.canWrite(), second.canWrite()]).toEqual([true, false]);
    expect(second.unfinished()).toEqual([]);
    second.open('BCDFGH', HEADER).write(joined(0));
    expect(first.unfinished()).toHaveLength(1);
  });
});

describe('a journal that cannot be had', () => {
  it('is said in one line, and tables go on without', () => {
    writeFileSync(path.join(folder, 'file'), '');
    const journal = open(path.join(folder, 'file', 'records'));
    journal.open('HKTVRQ', HEADER).write(joined(0));
    expect(reports).toEqual([
      expect.stringMatching(/^Records are not kept, and a restart ends all tables: .+\(.*records\)$/),
    ]);
  });

  it('is set aside whole when it is damaged, with a line, and a new one is begun', () => {
    const file = path.join(folder, JOURNAL_FILE);
    writeFileSync(file, 'this was a list of errands, once '.repeat(500));
    const journal = open();
    expect(reports).toEqual([
      expect.stringMatching(/are damaged\. They were set aside as .*\.damaged-1, and new ones/),
    ]);
    expect(readFileSync(`${file}.damaged-1`, 'utf8')).toMatch(/^this was a list/);
    journal.open('HKTVRQ', HEADER).write(joined(0));
    expect(journal.unfinished()[0]?.record?.lines).toEqual([joined(0)]);
  });

  it('is found out when a page in its middle is damaged', () => {
    const first = open();
    const table = first.open('HKTVRQ', HEADER);
    for (let tick = 0; tick < 2000; tick += 1) table.write(joined(tick));
    close(first);
    const file = path.join(folder, JOURNAL_FILE);
    const bytes = readFileSync(file);
    expect(bytes.length).toBeGreaterThan(20 * 4096);
    bytes.fill(0x5a, 8 * 4096, 12 * 4096);
    writeFileSync(file, bytes);
    open();
    expect(reports).toEqual([expect.stringMatching(/are damaged/)]);
    expect(readdirSync(folder).some((name) => name.includes('.damaged-1'))).toBe(true);
  });

  it('is said once when the disk is full, and nothing throws', () => {
    // a file that may not grow is what a full disk is to the database
    const node = JSON.stringify(process.execPath);
    const script = `ulimit -f 512; exec ${node} tests/support/fillJournal.ts ${JSON.stringify(folder)}`;
    const said: unknown = JSON.parse(execFileSync('bash', ['-c', script], { cwd: ROOT, encoding: 'utf8' }));
    expect(said).toEqual([
      expect.stringMatching(/^Records cannot be written at the moment, and tables go on without: /),
    ]);
    // what was written before stands
    const [table] = open().unfinished();
    expect(table?.record?.lines.length).toBeGreaterThan(50);
    expect(existsSync(path.join(folder, JOURNAL_FILE))).toBe(true);
  });
});

function codesOf(journal: Journal): readonly string[] {
  return journal.unfinished().map(({ code }) => code);
}

describe('a folder that several processes share', () => {
  it('gives each its own tables, and those of one that has ended to the first that looks', () => {
    const [one, two] = [open(folder, true), open(folder, true)];
    one.open('HKTVRQ', HEADER).write(joined(0));
    two.open('BCDFGH', HEADER).write(joined(0));
    two.open('JKLMNP', HEADER).end();
    expect([codesOf(one), codesOf(two)]).toEqual([[], []]);
    close(two);
    const three = open(folder, true);
    expect([codesOf(one), codesOf(three)]).toEqual([['BCDFGH'], []]);
    expect(codesOf(one)).toEqual([]);
    expect(reports).toEqual([]);
  });

  it('takes nobody in who wants it alone, and nobody where one has it alone', () => {
    const shared = open(folder, true);
    expect(open().canWrite()).toBe(false);
    close(shared);
    const alone = open();
    expect([alone.canWrite(), open(folder, true).canWrite()]).toEqual([true, false]);
    expect(reports.every((line) => line.includes('another server'))).toBe(true);
  });

  it('comes from one process, and goes back to one, with the tables that are open', () => {
    open().open('HKTVRQ', HEADER).write(joined(0));
    for (const isShared of [true, false]) {
      for (const journal of journals) close(journal);
      expect(codesOf(open(folder, isShared))).toEqual(['HKTVRQ']);
    }
  });

  it('lets no record expire that is open in another process', () => {
    const [one, two] = [open(folder, true), open(folder, true)];
    one.open('HKTVRQ', HEADER);
    nowMs += 1000;
    expect(two.expire(500)).toBe(0);
    expect(one.expire(500)).toBe(0);
  });
});
