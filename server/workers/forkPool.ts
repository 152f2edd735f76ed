import { Piscina } from 'piscina';
import type { ForkRefusal, ForkRequest } from '../../engine/record/index.ts';
import type { Result } from '../../engine/result.ts';
import type { Fork } from '../../engine/table/index.ts';

type Flown = Result<Fork, ForkRefusal>;

/** Flies the forks of all tables, one after the other, on a thread beside the one that steps the tables. */
interface ForkPool {
  /** Undefined when the pool was closed before it was flown. Rejects when the thread failed. */
  fly(request: ForkRequest): Promise<Flown | undefined>;
  close(): Promise<void>;
}

/** A thread that has had nothing to do for so long goes [ms]. */
const IDLE_MS = 60_000;

/** No thread runs before the first fork. */
export function openForkPool(): ForkPool {
  let threads: Piscina<ForkRequest, Flown> | undefined;
  let isClosed = false;
  return {
    async fly(request) {
      threads ??= new Piscina<ForkRequest, Flown>({
        filename: new URL('./forkWorker.ts', import.meta.url).href,
        name: 'fork',
        minThreads: 0,
        maxThreads: 1,
        idleTimeout: IDLE_MS,
      });
      try {
        return await threads.run(request);
      } catch (error) {
        if (isClosed) return undefined;
        throw error;
      }
    },
    async close() {
      isClosed = true;
      await threads?.destroy();
    },
  };
}
