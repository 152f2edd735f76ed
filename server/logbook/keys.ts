import { createHash, timingSafeEqual } from 'node:crypto';

/** What somebody shows to be let into the logbook. */
export interface Keys {
  /** Of single runs. */
  readonly runs: readonly string[];
  readonly administrator: string | undefined;
}

/** In how many letters a run key is drawn: 126 bits. */
export const RUN_KEY_LETTERS = 21;

/** Most run keys in one request. */
export const MOST_KEYS = 60;

/** Whether two keys are the same, in a time that says nothing about where they differ. */
export function isSameKey(one: string, other: string): boolean {
  return timingSafeEqual(digest(one), digest(other));
}

/** Opens a run by any of these keys. Each is looked at, whatever the others are. */
export function isOpenedBy(runKey: string | undefined, keys: readonly string[]): boolean {
  if (runKey === undefined) return false;
  return keys.filter((key) => isSameKey(key, runKey)).length > 0;
}

function digest(key: string): Buffer {
  return createHash('sha256').update(key).digest();
}
