import { createMemo } from '../table/memo.ts';
import type { Run, Table } from '../table/table.ts';
import { measuresOf, type InjectMeasures } from './measures.ts';
import { momentsOf, type ReviewMoment } from './moments.ts';

/** What the log of the crew comes to. */
export interface LookedBack {
  readonly measures: readonly InjectMeasures[];
  readonly moments: readonly ReviewMoment[];
}

const lookedBack = createMemo<Run, LookedBack>();

/** Measures and moments, the same for everybody: worked out anew only when what they are read from is another, since views ask twenty times a second. */
export function lookBack(table: Table): LookedBack {
  const { state, run } = table;
  const from = [state.talk.log, state.events, state.review, state.failures, run.flight.touchdown?.tick];
  return lookedBack(run, from, () => {
    const measures = measuresOf(table);
    return { measures, moments: momentsOf(table, measures) };
  });
}
