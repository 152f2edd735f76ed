import { existsSync } from 'node:fs';
import path from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { lockFolder } from './folderLock.ts';
import { JOURNAL_FILE, openJournalFile, recordText } from './journalFile.ts';

/** The records of a server as its owner sees them at the command line, whether or not the server runs. */
export interface RecordShelf {
  /** From the latest change to the earliest. */
  list(): readonly ShelvedRecord[];
  /** A kept record does not expire. */
  keep(id: string, isKept: boolean): void;
  /** Deletes a record with its names and places, also from the file; false, and nothing is done, where it is of a table that a running server has open. */
  remove(id: string): boolean;
  /** JSON Lines, as the parser of records reads them. */
  text(id: string): string;
  close(): void;
}

export interface ShelvedRecord {
  readonly id: string;
  /** Of the table; another table may have had the same one before. */
  readonly code: string;
  readonly openedMs: number;
  readonly changedMs: number;
  /** The table was not ended: a server has it open, or takes it up when it starts. */
  readonly isOpen: boolean;
  readonly isKept: boolean;
  readonly lines: number;
}

/** Undefined where no server has kept records in this folder yet. Throws what the database says of a file that it cannot read. */
export function openRecordShelf(folder: string): RecordShelf | undefined {
  const file = path.join(folder, JOURNAL_FILE);
  if (!existsSync(file)) return undefined;
  return shelfOf(openJournalFile(file), folder);
}

export function shelfOf(database: DatabaseSync, folder: string): RecordShelf {
  return {
    list: () => listOf(database),
    keep: (id, isKept) => void database.prepare('UPDATE record SET kept = ? WHERE id = ?').run(Number(isKept), id),
    remove: (id) => removeFrom(database, folder, id),
    text: (id) => recordText(database, id),
    close: () => database.close(),
  };
}

function listOf(database: DatabaseSync): readonly ShelvedRecord[] {
  const rows = database
    .prepare(
      `SELECT id, code, opened_ms, changed_ms, ended_ms, kept, (SELECT count(*) FROM line WHERE record = id) AS lines
       FROM record ORDER BY changed_ms DESC`,
    )
    .all();
  return rows.map((row) => ({
    id: String(row['id']),
    code: String(row['code']),
    openedMs: Number(row['opened_ms']),
    changedMs: Number(row['changed_ms']),
    isOpen: row['ended_ms'] === null,
    isKept: row['kept'] === 1,
    lines: Number(row['lines']),
  }));
}

/** What was deleted or written anew stands in the log as it was. */
export function emptyLog(database: DatabaseSync): void {
  database.exec('PRAGMA wal_checkpoint(TRUNCATE)');
}

function removeFrom(database: DatabaseSync, folder: string, id: string): boolean {
  // while the folder is ours no server starts, and takes the table up
  const unlock = lockFolder(folder, 0);
  const condition = unlock === undefined ? 'AND ended_ms IS NOT NULL' : '';
  try {
    const { changes } = database.prepare(`DELETE FROM record WHERE id = ? ${condition}`).run(id);
    emptyLog(database);
    return changes > 0;
  } finally {
    unlock?.();
  }
}
