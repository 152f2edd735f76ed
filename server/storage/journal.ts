import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { customAlphabet } from 'nanoid';
import { parseRecord, type RecordHeader, type RecordLine, type TableRecord } from '../../engine/record/index.ts';
import type { MemberId } from '../../engine/table/index.ts';
import { setAsideDamaged } from './damagedFile.ts';
import { doesRun, lockFolder, lockOwner, shareFolder } from './folderLock.ts';
import { JOURNAL_FILE, openJournalFile, recordText, textsOf } from './journalFile.ts';

/**
 * The journal of a server: every line of the record of every table, written before it takes effect, in one SQLite file. A process that is killed loses
 * nothing that was answered: the tables that were open are taken up from here.
 */
export interface Journal {
  /** Begins the record of a table that has just been opened under this code. `runKey`: with it the logbook opens the record; no part of the record. */
  open(code: string, header: RecordHeader, runKey?: string): TableJournal;
  /** Tables that were open when the process before this one ended; where several share the folder, those of processes that have ended since it was asked last. */
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
    run_key TEXT, summary TEXT, owner TEXT
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
  /** With other processes of this machine, each of which has tables of its own. */
  readonly isShared?: boolean;
  /** [ms] */
  readonly now?: () => number;
}): Journal {
  const { folder, report, isShared = false, now = Date.now } = options;
  try {
    mkdirSync(folder, { recursive: true });
    // two servers on one file would both take up its tables, but for those that share them out
    const unlock = isShared ? shareFolder(folder, LOCK_WAIT_MS) : lockFolder(folder, LOCK_WAIT_MS);
    if (unlock === undefined) throw new Error('another server that runs has them');
    return lockedJournal(folder, { report, now, unlock, isShared });
  } catch (error) {
    report(`Records are not kept, and a restart ends all tables: ${reasonOf(error)} (${folder})`);
    return { ...NO_JOURNAL, canWrite: () => false };
  }
}

function lockedJournal(
  folder: string,
  {
    report,
    now,
    unlock,
    isShared,
  }: { report: (line: string) => void; now: () => number; unlock: () => void; isShared: boolean },
): Journal {
  try {
    const database = openFile(path.join(folder, JOURNAL_FILE), report);
    const owner = isShared ? drawId() : undefined;
    const endOwner = owner === undefined ? ignore : lockOwner(folder, owner);
    const close = () => {
      database.close();
      endOwner();
      unlock();
    };
    const hasEnded = (other: string) => !doesRun(folder, other);
    return { ...journalOf(database, { report, now, owner, hasEnded }), close };
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

/** A file of before the logbook has no keys and no summaries, one of before several processes no owners. */
function addMissingColumns(database: DatabaseSync): void {
  const columns = database.prepare('PRAGMA table_info(record)').all();
  for (const name of ['run_key', 'summary', 'owner'])
    if (!columns.some((column) => column['name'] === name)) database.exec(`ALTER TABLE record ADD COLUMN ${name} TEXT`);
}

/** `owner`: of the tables of this process, where several share the file. `hasEnded`: of another one. */
interface JournalParts {
  readonly report: (line: string) => void;
  readonly now: () => number;
  readonly owner: string | undefined;
  readonly hasEnded: (owner: string) => boolean;
}

function journalOf(database: DatabaseSync, { report, now, owner, hasEnded }: JournalParts): Omit<Journal, 'close'> {
  const begin = database.prepare(
    'INSERT INTO record (id, code, header, opened_ms, changed_ms, run_key, owner) VALUES (?, ?, ?, ?, ?, ?, ?)',
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
      attempt(() => begin.run(id, code, JSON.stringify(header), now(), now(), runKey ?? null, owner ?? null));
      return tableJournal(id, 0);
    },
    unfinished: () =>
      unfinishedRows(database, owner, hasEnded).map(({ id, code, header, run_key: runKey }) => {
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
      // of those that are open elsewhere none is touched
      const others = owner === undefined ? '' : 'AND (ended_ms IS NOT NULL OR owner = ?)';
      const expired = database.prepare(`SELECT id FROM record WHERE kept = 0 AND changed_ms < ? ${others}`);
      let count = 0;
      attempt(() => {
        const rows = expired.all(now() - olderThanMs, ...(owner === undefined ? [] : [owner]));
        const ids = rows.map(({ id }) => String(id));
        for (const id of ids) if (!openHere.has(id)) count += Number(removeExpired.run(id).changes);
      });
      return count;
    },
  };
}

/** Those that nobody has any more; where several share the file, they are this one's from now on. */
function unfinishedRows(database: DatabaseSync, owner: string | undefined, hasEnded: (owner: string) => boolean) {
  const columns = 'id, code, header, run_key';
  if (owner === undefined)
    return database.prepare(`SELECT ${columns} FROM record WHERE ended_ms IS NULL ORDER BY opened_ms`).all();
  const others = database
    .prepare('SELECT DISTINCT owner FROM record WHERE ended_ms IS NULL AND owner IS NOT ?')
    .all(owner)
    .map(({ owner: other }) => other);
  const gone = others.filter((other) => other === null || hasEnded(String(other)));
  // one statement: of two processes that see another end, one gets each record
  const take = database.prepare(
    `UPDATE record SET owner = ? WHERE ended_ms IS NULL AND owner IS ? RETURNING ${columns}`,
  );
  return gone.flatMap((other) => take.all(owner, other ?? null));
}

function placesOf(database: DatabaseSync, id: string): readonly (readonly [MemberId, string])[] {
  const places = database.prepare('SELECT member, token FROM place WHERE record = ?').all(id);
  return places.map(({ member, token }) => [String(member), String(token)] as const);
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function ignore(): void {}
