import { CREW_NAMES } from './text/crewNames.ts';

const KEY = 'kilter-name';

/**
 * What this person is called at a table: the name that was given, else the one they had before in this tab, else an invented
 * one, so that nobody has to think of one before sitting down. Kept by the tab, gone with it.
 */
export function ownName(given: string): string {
  const name = given.trim() === '' ? (kept() ?? inventName()) : given.trim();
  try {
    sessionStorage.setItem(KEY, name);
  } catch {
    // where storage is blocked, the next table may get another invented name
  }
  return name;
}

function kept(): string | undefined {
  try {
    return sessionStorage.getItem(KEY) ?? undefined;
  } catch {
    return undefined;
  }
}

function inventName(): string {
  const [draw = 0] = crypto.getRandomValues(new Uint32Array(1));
  return CREW_NAMES[draw % CREW_NAMES.length] ?? CREW_NAMES[0];
}
