import { DatabaseSync } from 'node:sqlite';

/** The file in the folder of the records. */
export const JOURNAL_FILE = 'kilter.sqlite';

/** Someone at the command line may have the file for a moment: a line that waits is better than one that is lost [ms]. */
const BUSY_MS = 2000;

/** Opens the database of the records, for a server or for the command line beside it. */
export function openJournalFile(file: string): DatabaseSync {
  const database = new DatabaseSync(file, { timeout: BUSY_MS });
  try {
    database.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL;');
    // what is deleted is gone from the file too; and with a record its lines
    database.exec('PRAGMA secure_delete = ON; PRAGMA foreign_keys = ON;');
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/** The texts of the lines of a record, in order, after its header. */
export function textsOf(database: DatabaseSync, id: string): readonly string[] {
  const lines = database.prepare('SELECT text FROM line WHERE record = ? ORDER BY n').all(id);
  return lines.map(({ text }) => String(text));
}

/** A whole record as JSON Lines. */
export function recordText(database: DatabaseSync, id: string): string {
  const row = database.prepare('SELECT header FROM record WHERE id = ?').get(id);
  return [String(row?.['header']), ...textsOf(database, id)].map((line) => `${line}\n`).join('');
}
