import type { Table } from '../table/table.ts';
import { measuresOf, type InjectMeasures } from './measures.ts';
import { momentsOf, type ReviewMoment } from './moments.ts';

/** What the log of the crew comes to. */
export interface LookedBack {
  /** What it was read from. */
  readonly from: readonly unknown[];
  readonly measures: readonly InjectMeasures[];
  readonly moments: readonly ReviewMoment[];
}

/** Measures and moments, the same for everybody: worked out anew only when what they are read from is another, since views ask twenty times a second. */
export function lookBack(table: Table): LookedBack {
  const { state, run } = table;
  const from = [state.talk.log, state.events, state.review, state.failures, run.flight.touchdown?.tick];
  const before = run.lookedBack;
  if (before !== undefined && before.from.every((one, i) => one === from[i])) return before;
  const measures = measuresOf(table);
  run.lookedBack = { from, measures, moments: momentsOf(table, measures) };
  return run.lookedBack;
}
