import { hashValue } from '../math/hashValue.ts';
import { hashInstruments, type Table } from '../table/index.ts';
import type { MarkFields } from './record.ts';

/** Nobody flies by instruments. */
const NO_BELIEF = '0'.repeat(16);

/** The mark of a table as it is now: it covers everything that decides the next tick. */
export function markTable({ state, run }: Table): MarkFields {
  const { tick: _descentTick, ...descent } = run.descent.mark();
  const { instruments } = run;
  const belief = instruments === undefined ? NO_BELIEF : hashInstruments(instruments);
  const fields = { stage: state.stage, ...descent, belief, table: hashValue(state) };
  return { ...fields, hash: hashValue(fields) };
}
