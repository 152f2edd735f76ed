import { parseRecord, type TableRecord } from '../../engine/record/index.ts';
import type { RunTrack } from '../../engine/replay/index.ts';
import { accept, refuse, type Result } from '../../engine/result.ts';
import type { TablePlan } from '../../engine/table/index.ts';
import { layPlan } from '../drillShelf.ts';
import { RUN } from '../text/logbook.ts';

/** A run played again: what it was recorded from, and its last descent. */
export interface PlayedRun {
  readonly record: TableRecord;
  readonly plan: TablePlan;
  readonly track: RunTrack;
}

/** Plays the text of a record again, on a thread that is there for it alone; or why it cannot be. */
export async function playText(text: string): Promise<Result<PlayedRun, string>> {
  const record = parseRecord(text);
  return record.ok ? playRecord(record.value) : refuse(RUN.unread);
}

export async function playRecord(record: TableRecord): Promise<Result<PlayedRun, string>> {
  const { choice, drill } = record.header.plan;
  const plan = layPlan(choice, drill);
  if (!plan.ok) return refuse(RUN.unread);
  const track = await trackAside(record, plan.value);
  return track.ok ? accept({ record, plan: plan.value, track: track.value }) : track;
}

function trackAside(record: TableRecord, plan: TablePlan): Promise<Result<RunTrack, string>> {
  return new Promise((resolve) => {
    const worker = new Worker(new URL('./trackWorker.ts', import.meta.url), { type: 'module' });
    const answer = (answered: Result<RunTrack, string>) => {
      worker.terminate();
      resolve(answered);
    };
    worker.addEventListener('message', ({ data }: MessageEvent<Result<RunTrack, string>>) => answer(data));
    worker.addEventListener('error', () => answer(refuse(RUN.unread)));
    // a thread of this page has no origin to name
    // eslint-disable-next-line unicorn/require-post-message-target-origin -- that is for windows
    worker.postMessage({ record, plan });
  });
}
