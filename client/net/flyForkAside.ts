import type { FlyFork } from './localTable.ts';

type Flown = Awaited<ReturnType<FlyFork>>;

/** Flies a fork on a thread of the page, which is there for it alone. */
export const flyForkAside: FlyFork = (request) =>
  new Promise<Flown>((resolve) => {
    const worker = new Worker(new URL('./forkWorker.ts', import.meta.url), { type: 'module' });
    const answer = (flown: Flown) => {
      worker.terminate();
      resolve(flown);
    };
    worker.addEventListener('message', ({ data }: MessageEvent<Flown>) => answer(data));
    // the scorecard stands without it
    worker.addEventListener('error', () => answer(undefined));
    // a thread of this page has no origin to name
    // eslint-disable-next-line unicorn/require-post-message-target-origin -- that is for windows
    worker.postMessage(request);
  });
