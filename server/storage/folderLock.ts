import { readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { DatabaseSync } from 'node:sqlite';

/** Held by the server whose tables stand in the folder; where several share it, each holds it for reading. */
const LOCK_FILE = 'server.lock';

/**
 * Takes a folder of records for one server; returns what lets it go again, or undefined where a server has it. A process that ends in any way lets go. `waitMs`:
 * how long to wait for who has it only for a moment.
 */
export function lockFolder(folder: string, waitMs: number): (() => void) | undefined {
  return lockFile(path.join(folder, LOCK_FILE), waitMs, (lock) => lock.exec('BEGIN EXCLUSIVE'));
}

/** Takes a folder together with others who do so; undefined where a server has it for itself. */
export function shareFolder(folder: string, waitMs: number): (() => void) | undefined {
  return lockFile(path.join(folder, LOCK_FILE), waitMs, (lock) => {
    lock.exec('BEGIN');
    // the lock is taken with the first look
    lock.prepare('SELECT count(*) FROM sqlite_master').get();
  });
}

/** Says of one of several that share a folder that it runs, until it ends in any way. */
export function lockOwner(folder: string, owner: string): () => void {
  const unlock = lockFile(ownerFile(folder, owner), 0, (lock) => lock.exec('BEGIN EXCLUSIVE'));
  if (unlock === undefined) throw new Error(`another process is ${owner}`);
  return () => {
    unlock();
    rmSync(ownerFile(folder, owner), { force: true });
  };
}

/** Whether one of those who share a folder runs. */
export function doesRun(folder: string, owner: string): boolean {
  if (!readdirSync(folder).includes(ownerName(owner))) return false;
  const unlock = lockFile(ownerFile(folder, owner), 0, (lock) => lock.exec('BEGIN EXCLUSIVE'));
  if (unlock === undefined) return true;
  unlock();
  rmSync(ownerFile(folder, owner), { force: true });
  return false;
}

function ownerName(owner: string): string {
  return `server-${owner}.lock`;
}

function ownerFile(folder: string, owner: string): string {
  return path.join(folder, ownerName(owner));
}

function lockFile(file: string, waitMs: number, take: (lock: DatabaseSync) => void): (() => void) | undefined {
  // SQLite takes locks that the system frees with the process, on every system
  const lock = new DatabaseSync(file, { timeout: waitMs });
  try {
    take(lock);
    return () => lock.close();
  } catch (error) {
    lock.close();
    if (error instanceof Error && /locked/.test(error.message)) return undefined;
    throw error;
  }
}
