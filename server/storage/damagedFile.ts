import { existsSync, renameSync } from 'node:fs';

/** What SQLite says of a file that is none of its own, or whose pages do not fit together. */
const DAMAGE = /not a database|malformed|disk image|corrupt/i;

/**
 * Moves a damaged database aside, with the files that belong to it, so that nothing of it is lost; returns its new name. undefined when the error is
 * another one: a folder that may not be written, a disk that is full.
 */
export function setAsideDamaged(file: string, error: unknown): string | undefined {
  if (!DAMAGE.test(error instanceof Error ? error.message : '')) return undefined;
  let number = 1;
  while (existsSync(`${file}.damaged-${number}`)) number += 1;
  const aside = `${file}.damaged-${number}`;
  for (const suffix of ['-wal', '-shm', '']) if (existsSync(file + suffix)) renameSync(file + suffix, aside + suffix);
  return aside;
}
