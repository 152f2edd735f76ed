import path from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import type { RecordLine } from '../../engine/record/index.ts';
import { JOURNAL_FILE, openJournalFile } from './journalFile.ts';
import { emptyLog, shelfOf, type RecordShelf, type ShelvedRecord } from './recordShelf.ts';

/** The records of a server as its logbook has them. Records of tables that are open are listed, and changed by their tables alone. */
export interface RunShelf extends Pick<RecordShelf, 'keep' | 'remove' | 'text' | 'close'> {
  /** From the latest change to the earliest. */
  runs(): readonly ShelvedRun[];
  /** What a list says of it, as JSON. */
  summarize(id: string, summary: string): void;
  /** Lines that come after all others; its summary is out of date then. */
  append(id: string, lines: readonly RecordLine[]): void;
  /** Other lines in place of all, and nothing of the old ones is left in the file; its summary is out of date then. */
  rewrite(id: string, lines: readonly RecordLine[]): void;
}

export interface ShelvedRun extends Omit<ShelvedRecord, 'lines'> {
  /** First line of the record, as JSON. */
  readonly header: string;
  /** Absent: only the administrator opens it. */
  readonly runKey?: string;
  /** Absent: not worked out yet. */
  readonly summary?: string;
}

/** Of a folder whose journal is open. Throws what the database says of a file that it cannot read. */
export function openRunShelf(folder: string): RunShelf {
  const database = openJournalFile(path.join(folder, JOURNAL_FILE));
  const shelf = shelfOf(database, folder);
  const stale = database.prepare('UPDATE record SET summary = NULL WHERE id = ? AND ended_ms IS NOT NULL');
  const insert = database.prepare('INSERT INTO line (record, n, text) VALUES (?, ?, ?)');
  const change = (id: string, from: () => number, lines: readonly RecordLine[]) =>
    together(database, () => {
      if (stale.run(id).changes === 0) throw new Error(`there is no record ${id} of a table that has ended`);
      const first = from();
      for (const [index, line] of lines.entries()) insert.run(id, first + index, JSON.stringify(line));
    });
  return {
    ...shelf,
    runs: () => runsOf(database),
    summarize: (id, summary) => void database.prepare('UPDATE record SET summary = ? WHERE id = ?').run(summary, id),
    append(id, lines) {
      const count = database.prepare('SELECT count(*) AS lines FROM line WHERE record = ?');
      change(id, () => Number(count.get(id)?.['lines']), lines);
    },
    rewrite(id, lines) {
      const clear = database.prepare('DELETE FROM line WHERE record = ?');
      change(id, () => (clear.run(id), 0), lines);
      emptyLog(database);
    },
  };
}

function together(database: DatabaseSync, act: () => void): void {
  database.exec('BEGIN IMMEDIATE');
  try {
    act();
    database.exec('COMMIT');
  } catch (error) {
    database.exec('ROLLBACK');
    throw error;
  }
}

function runsOf(database: DatabaseSync): readonly ShelvedRun[] {
  const columns = 'id, code, header, opened_ms, changed_ms, ended_ms, kept, run_key, summary';
  const rows = database.prepare(`SELECT ${columns} FROM record ORDER BY changed_ms DESC`).all();
  return rows.map(({ run_key: runKey, summary, ...row }) => ({
    id: String(row['id']),
    code: String(row['code']),
    header: String(row['header']),
    openedMs: Number(row['opened_ms']),
    changedMs: Number(row['changed_ms']),
    isOpen: row['ended_ms'] === null,
    isKept: row['kept'] === 1,
    ...(typeof runKey === 'string' && { runKey }),
    ...(typeof summary === 'string' && { summary }),
  }));
}
