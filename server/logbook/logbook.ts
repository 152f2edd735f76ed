import type { Amendment, RecordLine } from '../../engine/record/index.ts';
import { accept, refuse, type Result } from '../../engine/result.ts';
import type { ListedRun } from '../messages/index.ts';
import type { RunShelf, ShelvedRun } from '../storage/index.ts';
import type { RunPool } from '../workers/runPool.ts';
import { isOpenedBy, isSameKey, type Keys } from './keys.ts';
import { listRun, NO_SUMMARY } from './listedRun.ts';

/** Why something is not done, with the status of the answer. */
export interface LogbookRefusal {
  readonly status: 403 | 404 | 409;
  readonly reason: string;
}

type Answer<Value> = Promise<Result<Value, LogbookRefusal>>;

export interface RunList {
  readonly isAdministrator: boolean;
  /** From the latest change to the earliest. */
  readonly runs: readonly ListedRun[];
  /** Run keys that open nothing here any more. */
  readonly unknownKeys: readonly string[];
}

/** The runs of this server, for whoever has their keys. There are no accounts. */
export interface Logbook {
  list(keys: Keys): Answer<RunList>;
  /** JSON Lines. */
  text(keys: Keys, id: string): Answer<string>;
  keep(keys: Keys, id: string, isKept: boolean): Answer<void>;
  /** With its names, out of the file too. */
  remove(keys: Keys, id: string): Answer<void>;
  /** The run is written anew without the name. */
  forget(keys: Keys, id: string, name: string): Answer<void>;
  /** Goes on with its plan of improvement. */
  amend(keys: Keys, id: string, amendment: Amendment): Answer<void>;
}

const NO_RUN: LogbookRefusal = { status: 404, reason: 'No run here opens with that key.' };
const OPEN: LogbookRefusal = {
  status: 409,
  reason: 'The table of this run is still open. When everybody has left it, the run opens here.',
};

interface Parts {
  readonly shelf: RunShelf;
  readonly pool: RunPool;
  /** Undefined: there is none. */
  readonly administratorKey: string | undefined;
  readonly recordDays: number;
  readonly onFault: (fault: Error, where: string) => void;
}

export function openLogbook(parts: Parts): Logbook {
  const { shelf, pool } = parts;
  const summaries = keepSummaries(parts);
  // what changes a run reads it first: two changes must not pass each other
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <Value>(act: () => Answer<Value>): Answer<Value> => {
    const next = last.then(act, act);
    last = next.catch(() => undefined);
    return next;
  };
  const openRun = (keys: Keys, id: string) => {
    const all = allowed(keys, parts);
    if (!all.ok) return all;
    const run = all.value.runs.find((one) => one.id === id);
    if (run === undefined) return refuse(NO_RUN);
    return run.isOpen ? refuse(OPEN) : accept(run);
  };
  const change = (
    keys: Keys,
    id: string,
    work: (text: string) => Promise<Result<readonly RecordLine[], string>>,
    write: (lines: readonly RecordLine[]) => void,
  ): Answer<void> =>
    inTurn(async () => {
      const run = openRun(keys, id);
      if (!run.ok) return run;
      const worked = await work(shelf.text(id));
      if (!worked.ok) return refuse({ status: 409, reason: worked.error });
      write(worked.value);
      await summaries.make(id);
      return accept(undefined);
    });
  return {
    list: async (keys) => {
      const all = allowed(keys, parts);
      if (!all.ok) return all;
      const { runs, isAdministrator, unknownKeys } = all.value;
      for (const { id, isOpen, summary } of runs) if (!isOpen && summary === undefined) summaries.want(id);
      return accept({ isAdministrator, unknownKeys, runs: runs.map((run) => listRun(run, parts.recordDays)) });
    },
    text: async (keys, id) => {
      const run = openRun(keys, id);
      return run.ok ? accept(shelf.text(id)) : run;
    },
    keep: async (keys, id, isKept) => {
      const run = openRun(keys, id);
      return run.ok ? accept(shelf.keep(id, isKept)) : run;
    },
    remove: (keys, id) =>
      inTurn(async () => {
        const run = openRun(keys, id);
        if (!run.ok) return run;
        return shelf.remove(id) ? accept(undefined) : refuse(NO_RUN);
      }),
    forget: (keys, id, name) =>
      change(
        keys,
        id,
        (text) => pool.forget(text, name),
        (lines) => shelf.rewrite(id, lines),
      ),
    amend: (keys, id, amendment) =>
      change(
        keys,
        id,
        (text) => pool.amend(text, amendment),
        (lines) => shelf.append(id, lines),
      ),
  };
}

interface Allowed {
  readonly runs: readonly ShelvedRun[];
  readonly isAdministrator: boolean;
  readonly unknownKeys: readonly string[];
}

function allowed({ runs: keys, administrator }: Keys, parts: Parts): Result<Allowed, LogbookRefusal> {
  const runs = parts.shelf.runs();
  if (administrator !== undefined) {
    const { administratorKey } = parts;
    if (administratorKey === undefined)
      return refuse({ status: 403, reason: 'This server has no administrator’s key.' });
    if (!isSameKey(administrator, administratorKey))
      return refuse({ status: 403, reason: 'That is not the administrator’s key of this server.' });
    return accept({ runs, isAdministrator: true, unknownKeys: [] });
  }
  const opened = runs.filter(({ runKey }) => isOpenedBy(runKey, keys));
  const unknownKeys = keys.filter((key) => !opened.some(({ runKey }) => isOpenedBy(runKey, [key])));
  return accept({ runs: opened, isAdministrator: false, unknownKeys });
}

/** Works out the summaries that are missing, one after the other, each once. */
function keepSummaries({ shelf, pool, onFault }: Parts) {
  const wanted = new Set<string>();
  const make = async (id: string) => {
    const text = shelf.text(id);
    const summary = await pool.summarize(text);
    // it may have been written anew meanwhile: then its summary is made by whoever did
    if (shelf.text(id) === text) shelf.summarize(id, summary === undefined ? NO_SUMMARY : JSON.stringify(summary));
  };
  return {
    make,
    want(id: string) {
      if (wanted.has(id)) return;
      wanted.add(id);
      make(id)
        .catch((error: unknown) => {
          if (!pool.isClosed) onFault(error instanceof Error ? error : new Error(String(error)), 'logbook');
        })
        .finally(() => wanted.delete(id));
    },
  };
}
