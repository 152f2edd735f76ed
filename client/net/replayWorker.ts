import { cutClip, logDescent, type ClipCut } from '../../engine/replay/index.ts';
import type { TableRecord } from '../../engine/record/index.ts';
import { playedModel, type TablePlan } from '../../engine/table/index.ts';

/** A descent to be looked back at. Without `cut` its samples and statements are wanted. */
export interface ReplayRequest {
  readonly record: TableRecord;
  readonly plan: TablePlan;
  readonly cut?: ClipCut;
}

/** A thread of the page that plays one record again: a request comes, its answer goes. */
addEventListener('message', ({ data }: MessageEvent<ReplayRequest>) => {
  const { record, plan, cut } = data;
  const parts = { plan, model: playedModel };
  postMessage(cut === undefined ? logDescent(record, parts) : cutClip(record, parts, cut));
});
