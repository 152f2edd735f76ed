import { forkRecord, type ForkRequest } from '../../engine/record/index.ts';
import { playedModel } from '../../engine/table/index.ts';

/** A thread of the page that flies one fork: a request comes, its answer goes. */
addEventListener('message', ({ data }: MessageEvent<ForkRequest>) => {
  const { record, plan, change, other } = data;
  postMessage(forkRecord(record, { plan, model: playedModel, other }, change));
});
