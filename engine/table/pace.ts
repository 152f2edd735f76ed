import type { Pace } from './planChoice.ts';
import type { TableState } from './tableState.ts';

/**
 * Ticks of the table in a tick of the clock on the wall [-]. Whoever calls `stepTable` keeps to it; a tick stays a tick, so that a descent comes out the
 * same at every pace. Only a descent that runs is slowed.
 */
export function paceNow({ stage, pace }: Pick<TableState, 'stage' | 'pace'>): Pace {
  return stage === 'descending' ? pace : 1;
}
