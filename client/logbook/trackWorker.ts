import type { TableRecord } from '../../engine/record/index.ts';
import { trackRun } from '../../engine/replay/index.ts';
import { playedModel, type TablePlan } from '../../engine/table/index.ts';

/** A thread of the page that plays one record again: a request comes, its answer goes. */
addEventListener('message', ({ data }: MessageEvent<{ readonly record: TableRecord; readonly plan: TablePlan }>) => {
  postMessage(trackRun(data.record, { plan: data.plan, model: playedModel }));
});
