import { forkRecord, type ForkRequest } from '../../engine/record/index.ts';
import { playedModel } from '../../engine/table/index.ts';

/** The thread that flies forks: called by its pool, by name, with a request. */
export function fork({ record, plan, change, other }: ForkRequest): ReturnType<typeof forkRecord> {
  return forkRecord(record, { plan, model: playedModel, other }, change);
}
