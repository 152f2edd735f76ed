import os from 'node:os';
import { Piscina } from 'piscina';
import type { Portions, Work } from './work.ts';

/** How a long piece of work is run and watched. */
export interface LongWork {
  /** Worker threads; default one for each core. The result does not depend on it. */
  readonly workers?: number;
  /** Aborting it ends the work cleanly: what was answered so far is kept. */
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: WorkProgress) => void;
}

export interface WorkProgress {
  readonly done: number;
  /** What is known to be needed; for an envelope it grows as the boundary shows. */
  readonly known: number;
}

/** Portions in flight for each thread: one being worked on, one waiting, so that no thread idles. */
const IN_FLIGHT = 2;

interface Pool<Kind extends keyof Portions> {
  readonly workers: number;
  /**
   * Answers every portion, in whatever order they come back. Ends early, with the portions in flight answered, when the signal
   * is aborted. Throws what a portion threw.
   */
  answerAll(
    portions: Iterable<Portions[Kind]['portion']>,
    take: (answer: Portions[Kind]['answer']) => void,
    signal?: AbortSignal,
  ): Promise<void>;
  close(): Promise<void>;
}

export function defaultWorkers(): number {
  return os.availableParallelism();
}

/** Threads for one piece of work. Close it when done. */
export function openPool<Kind extends keyof Portions>(
  work: Work & { readonly kind: Kind },
  workers: number,
): Pool<Kind> {
  const piscina = new Piscina<Portions[Kind]['portion'], Portions[Kind]['answer']>({
    filename: new URL('./simulationWorker.ts', import.meta.url).href,
    name: work.kind,
    workerData: work,
    minThreads: workers,
    maxThreads: workers,
  });
  return {
    workers,
    async answerAll(portions, take, signal) {
      const source = portions[Symbol.iterator]();
      let hasFailed = false;
      const isOver = (): boolean => hasFailed || signal?.aborted === true;
      const feed = async (): Promise<void> => {
        while (!isOver()) {
          const next = source.next();
          if (next.done === true) return;
          try {
            take(await piscina.run(next.value));
          } catch (error) {
            hasFailed = true;
            throw error;
          }
        }
      };
      // a pool closed with portions in flight takes their answers for messages that nobody asked for
      const feeds = await Promise.allSettled(Array.from({ length: workers * IN_FLIGHT }, feed));
      const failure = feeds.find((outcome) => outcome.status === 'rejected');
      if (failure !== undefined) throw failure.reason;
    },
    close: () => piscina.destroy(),
  };
}
