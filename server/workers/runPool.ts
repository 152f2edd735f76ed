import { Piscina } from 'piscina';
import type { Amendment, RecordLine, RunSummary } from '../../engine/record/index.ts';
import type { Result } from '../../engine/result.ts';
import type * as Worker from './runWorker.ts';

type Lines = Result<readonly RecordLine[], string>;

/** Plays records again for the logbook, one after the other, on a thread beside the one that steps the tables. Each rejects when the thread failed or the pool was closed. */
export interface RunPool {
  /** Undefined where the record is none that this engine plays. */
  summarize(text: string): Promise<RunSummary | undefined>;
  /** The lines of the record without a name, or why not. */
  forget(text: string, name: string): Promise<Lines>;
  /** The lines that come after it, or why there are none. */
  amend(text: string, amendment: Amendment): Promise<Lines>;
  /** What is asked of it then fails, and is no fault. */
  readonly isClosed: boolean;
  close(): Promise<void>;
}

/** Each function of the thread gets its task and gives its answer. */
interface Run {
  (name: 'summarize', task: Parameters<typeof Worker.summarize>[0]): Promise<RunSummary | undefined>;
  (name: 'forget', task: Parameters<typeof Worker.forget>[0]): Promise<Lines>;
  (name: 'amend', task: Parameters<typeof Worker.amend>[0]): Promise<Lines>;
}

/** A thread that has had nothing to do for so long goes [ms]. */
const IDLE_MS = 60_000;

/** No thread runs before it is asked for something. */
export function openRunPool(): RunPool {
  let threads: Piscina | undefined;
  let isClosed = false;
  const run: Run = (name, task) => {
    threads ??= new Piscina({
      filename: new URL('./runWorker.ts', import.meta.url).href,
      minThreads: 0,
      maxThreads: 1,
      idleTimeout: IDLE_MS,
    });
    return threads.run(task, { name });
  };
  return {
    summarize: (text) => run('summarize', { text }),
    forget: (text, name) => run('forget', { text, name }),
    amend: (text, amendment) => run('amend', { text, amendment }),
    get isClosed() {
      return isClosed;
    },
    async close() {
      isClosed = true;
      await threads?.destroy();
    },
  };
}
