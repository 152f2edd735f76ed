import type { ClipCut, ClipFrame, DescentLog } from '../../engine/replay/index.ts';
import type { Result } from '../../engine/result.ts';
import type { ReplayRequest } from './replayWorker.ts';

/** What is wanted of a record, on a thread of the page that is there for it alone; undefined where it could not be had. */

export function cutClipAside(
  request: ReplayRequest & { readonly cut: ClipCut },
): Promise<readonly ClipFrame[] | undefined> {
  return askAside<readonly ClipFrame[]>(request);
}

export function logDescentAside(request: Omit<ReplayRequest, 'cut'>): Promise<DescentLog | undefined> {
  return askAside<DescentLog>(request);
}

function askAside<Answer>(request: ReplayRequest): Promise<Answer | undefined> {
  return new Promise((resolve) => {
    const worker = new Worker(new URL('./replayWorker.ts', import.meta.url), { type: 'module' });
    const answer = (answered: Answer | undefined) => {
      worker.terminate();
      resolve(answered);
    };
    worker.addEventListener('message', ({ data }: MessageEvent<Result<Answer, unknown>>) =>
      answer(data.ok ? data.value : undefined),
    );
    worker.addEventListener('error', () => answer(undefined));
    // a thread of this page has no origin to name
    // eslint-disable-next-line unicorn/require-post-message-target-origin -- that is for windows
    worker.postMessage(request);
  });
}
