/** A run whose table somebody ran in this browser, and the key that opens it in the logbook. */
interface KeptRunKey {
  readonly key: string;
  /** Six letters, without the space. */
  readonly code: string;
  readonly title: string;
  readonly openedMs: number;
}

const PLACE = 'kilter-run-keys';

/** As many as the server looks at in one request: the newest. */
export const MOST_RUN_KEYS = 60;

/** From the newest to the oldest. None where storage is blocked. */
export function keptRunKeys(): readonly KeptRunKey[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(PLACE) ?? '[]');
    return Array.isArray(kept) ? kept.filter(isKept) : [];
  } catch {
    return [];
  }
}

/** Keeps a key in this browser; one that is there already stays where it is. */
export function keepRunKey(run: KeptRunKey): void {
  const kept = keptRunKeys();
  if (!kept.some(({ key }) => key === run.key)) store([run, ...kept].slice(0, MOST_RUN_KEYS));
}

function store(runs: readonly KeptRunKey[]): void {
  try {
    localStorage.setItem(PLACE, JSON.stringify(runs));
  } catch {
    // the table works without it; whoever runs it can save the record
  }
}

function isKept(value: unknown): value is KeptRunKey {
  if (typeof value !== 'object' || value === null) return false;
  return ['key', 'code', 'title'].every(
    (name) => typeof Object.entries(value).find(([at]) => at === name)?.[1] === 'string',
  );
}
