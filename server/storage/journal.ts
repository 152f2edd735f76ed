import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { customAlphabet } from 'nanoid';
import { parseRecord, type RecordHeader, type RecordLine, type TableRecord } from '../../engine/record/index.ts';
import type { MemberId } from '../../engine/table/index.ts';
import { setAsideDamaged } from './damagedFile.ts';
import { lockFolder } from './folderLock.ts';
import { JOURNAL_FILE, openJournalFile, recordText, textsOf } from './journalFile.ts';

/**
 * The journal of a server: every line of the record of every table, written before it takes effect, in one SQLite file. A process that is killed loses
 * nothing that was answered: the tables that were open are taken up from here.
 */
export interface Journal {
  /** Begins the record of a table that has just been opened under this code. `runKey`: with it the logbook opens the record; no part of the record. */
  open(code: string, header: RecordHeader, runKey?: string): TableJournal;
  /** Tables that were open when the process before this one ended. */
  unfinished(): readonly UnfinishedTable[];
  /** Deletes the records that have not changed for so long, unless they are kept, or of a table that is open here [ms]; returns how many. */
  expire(olderThanMs: number): number;
  /** False where records are wanted and cannot be written at the moment. */
  canWrite(): boolean;
  /** Whether there is a file of records at all. */
  readonly hasFile: boolean;
  close(): void;
}

export interface TableJournal {
  write(line: RecordLine): void;
  /** The token that brings a member back, across processes too; never part of a record. */
  keepPlace(member: MemberId, token: string): void;
  forgetPlace(member: MemberId): void;
  /** Nobody comes back to this table any more. */
  end(): void;
  /** Deletes the record: the table has begun another one before anything was flown. */
  drop(): void;
  /** The record so far as JSON Lines; undefined where none is kept, or not all of it. */
  text(): string | undefined;
}

export interface UnfinishedTable {
  readonly code: string;
  /** undefined: of another version, or not readable; its table cannot be taken up. */
  readonly record: TableRecord | undefined;
  readonly places: readonly (readonly [MemberId, string])[];
  /** Absent: begun before runs had one. */
  readonly runKey?: string;
  readonly journal: TableJournal;
}

/** Someone at the command line may have the folder for a moment [ms]. */
const LOCK_WAIT_MS = 1000;

/** Without signs: an id that begins with a dash would be read as an option on a command line. 12 letters of 32 make 60 bits. */
const drawId = customAlphabet('23456789abcdefghjkmnpqrstuvwxyz0', 12);

const SCHEMA = `
  CREATE TABLE IF NOT EXISTS record (
    id TEXT PRIMARY KEY, code TEXT NOT NULL, header TEXT NOT NULL,
    opened_ms INTEGER NOT NULL, changed_ms INTEGER NOT NULL, ended_ms INTEGER, kept INTEGER NOT NULL DEFAULT 0,
    run_key TEXT, summary TEXT
  ) STRICT;
  CREATE TABLE IF NOT EXISTS line (
    record TEXT NOT NULL REFERENCES record ON DELETE CASCADE, n INTEGER NOT NULL, text TEXT NOT NULL,
    PRIMARY KEY (record, n)
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE IF NOT EXISTS place (
    record TEXT NOT NULL REFERENCES record ON DELETE CASCADE, member TEXT NOT NULL, token TEXT NOT NULL,
    PRIMARY KEY (record, member)
  ) STRICT, WITHOUT ROWID;
`;

/**
 * Opens the journal in a folder, which is made where it is missing. Whatever stands in the way is reported in one line, and tables run without it: then a
 * restart ends them.
 */
export function openJournal(options: {
  readonly folder: string;
  readonly report: (line: string) => void;
  /** [ms] */
  readonly now?: () => number;
}): Journal {
  const { folder, report, now = Date.now } = options;
  try {
    mkdirSync(folder, { recursive: true });
    // two servers on one file would both take up its tables
    const unlock = lockFolder(folder, LOCK_WAIT_MS);
    if (unlock === undefined) throw new Error('another server that runs has them');
    return lockedJournal(folder, { report, now, unlock });
  } catch (error) {
    report(`Records are not kept, and a restart ends all tables: ${reasonOf(error)} (${folder})`);
    return { ...NO_JOURNAL, canWrite: () => false };
  }
}

function lockedJournal(
  folder: string,
  { report, now, unlock }: { report: (line: string) => void; now: () => number; unlock: () => void },
): Journal {
  try {
    const database = openFile(path.join(folder, JOURNAL_FILE), report);
    const close = () => {
      database.close();
      unlock();
    };
    return { ...journalOf(database, report, now), close };
  } catch (error) {
    unlock();
    throw error;
  }
}

/** Keeps nothing. */
export const NO_JOURNAL: Journal = {
  open: () => ({
    write: ignore,
    keepPlace: ignore,
    forgetPlace: ignore,
    end: ignore,
    drop: ignore,
    text: () => undefined,
  }),
  unfinished: () => [],
  expire: () => 0,
  canWrite: () => true,
  hasFile: false,
  close: ignore,
};

function openFile(file: string, report: (line: string) => void): DatabaseSync {
  try {
    return prepareFile(file);
  } catch (error) {
    const aside = setAsideDamaged(file, error);
    if (aside === undefined) throw error;
    report(`The records in ${file} are damaged. They were set aside as ${aside}, and new ones are begun.`);
    return prepareFile(file);
  }
}

function prepareFile(file: string): DatabaseSync {
  const database = openJournalFile(file);
  try {
    database.exec(SCHEMA);
    addMissingColumns(database);
    const check = database.prepare('PRAGMA quick_check(1)').get();
    if (check?.['quick_check'] !== 'ok') throw new Error('database disk image is malformed');
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/** A file of before the logbook has no keys and no summaries. */
function addMissingColumns(database: DatabaseSync): void {
  const columns = database.prepare('PRAGMA table_info(record)').all();
  for (const name of ['run_key', 'summary'])
    if (!columns.some((column) => column['name'] === name)) database.exec(`ALTER TABLE record ADD COLUMN ${name} TEXT`);
}

function journalOf(database: DatabaseSync, report: (line: string) => void, now: () => number): Omit<Journal, 'close'> {
  const begin = database.prepare(
    'INSERT INTO record (id, code, header, opened_ms, changed_ms, run_key) VALUES (?, ?, ?, ?, ?, ?)',
  );
  const append = database.prepare('INSERT INTO line (record, n, text) VALUES (?, ?, ?)');
  const touch = database.prepare('UPDATE record SET changed_ms = ? WHERE id = ?');
  const end = database.prepare('UPDATE record SET ended_ms = ? WHERE id = ?');
  const putPlace = database.prepare('INSERT OR REPLACE INTO place (record, member, token) VALUES (?, ?, ?)');
  const dropPlace = database.prepare('DELETE FROM place WHERE record = ? AND member = ?');
  const dropPlaces = database.prepare('DELETE FROM place WHERE record = ?');
  const remove = database.prepare('DELETE FROM record WHERE id = ?');
  const removeExpired = database.prepare('DELETE FROM record WHERE id = ? AND kept = 0');
  const openHere = new Set<string>();
  let isFaultTold = false;

  /** False when it could not be written; said once, until something can be written again. */
  const attempt = (write: () => void): boolean => {
    try {
      write();
      isFaultTold = false;
      return true;
    } catch (error) {
      if (!isFaultTold) report(`Records cannot be written at the moment, and tables go on without: ${reasonOf(error)}`);
      isFaultTold = true;
      return false;
    }
  };

  const tableJournal = (id: string, lines: number): TableJournal => {
    openHere.add(id);
    let n = lines;
    // a record with a gap would replay to another table: after the first line that is lost, none is added
    let isWhole = true;
    return {
      write(line) {
        isWhole &&= attempt(() => {
          append.run(id, n, JSON.stringify(line));
          if (line.line === 'mark') touch.run(now(), id);
        });
        n += 1;
      },
      keepPlace: (member, token) => void attempt(() => putPlace.run(id, member, token)),
      forgetPlace: (member) => void attempt(() => dropPlace.run(id, member)),
      end() {
        openHere.delete(id);
        attempt(() => {
          end.run(now(), id);
          dropPlaces.run(id);
        });
      },
      drop() {
        openHere.delete(id);
        attempt(() => remove.run(id));
      },
      text: () => (isWhole ? recordText(database, id) : undefined),
    };
  };

  return {
    canWrite: () => !isFaultTold,
    hasFile: true,
    open(code, header, runKey) {
      const id = drawId();
      attempt(() => begin.run(id, code, JSON.stringify(header), now(), now(), runKey ?? null));
      return tableJournal(id, 0);
    },
    unfinished: () =>
      database
        .prepare('SELECT id, code, header, run_key FROM record WHERE ended_ms IS NULL ORDER BY opened_ms')
        .all()
        .map(({ id, code, header, run_key: runKey }) => {
          const texts = textsOf(database, String(id));
          const parsed = parseRecord([header, ...texts].join('\n'));
          return {
            code: String(code),
            record: parsed.ok ? parsed.value : undefined,
            places: placesOf(database, String(id)),
            ...(typeof runKey === 'string' && { runKey }),
            journal: tableJournal(String(id), texts.length),
          };
        }),
    expire(olderThanMs) {
      const expired = database.prepare('SELECT id FROM record WHERE kept = 0 AND changed_ms < ?');
      let count = 0;
      attempt(() => {
        const ids = expired.all(now() - olderThanMs).map(({ id }) => String(id));
        for (const id of ids) if (!openHere.has(id)) count += Number(removeExpired.run(id).changes);
      });
      return count;
    },
  };
}

function placesOf(database: DatabaseSync, id: string): readonly (readonly [MemberId, string])[] {
  const places = database.prepare('SELECT member, token FROM place WHERE record = ?').all(id);
  return places.map(({ member, token }) => [String(member), String(token)] as const);
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function ignore(): void {}
