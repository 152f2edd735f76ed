import path from 'node:path';
import { DatabaseSync } from 'node:sqlite';

/** Held by the server whose tables stand in the folder. */
const LOCK_FILE = 'server.lock';

/**
 * Takes a folder of records for one server; returns what lets it go again, or undefined where a server has it. A process that ends in any way lets go. `waitMs`:
 * how long to wait for who has it only for a moment.
 */
export function lockFolder(folder: string, waitMs: number): (() => void) | undefined {
  // SQLite takes locks that the system frees with the process, on every system
  const lock = new DatabaseSync(path.join(folder, LOCK_FILE), { timeout: waitMs });
  try {
    lock.exec('BEGIN EXCLUSIVE');
    return () => lock.close();
  } catch (error) {
    lock.close();
    if (error instanceof Error && /locked/.test(error.message)) return undefined;
    throw error;
  }
}
