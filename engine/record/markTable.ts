import { hashValue } from '../math/hashValue.ts';
import type { Table } from '../table/index.ts';
import type { MarkFields } from './record.ts';

/** The mark of a table as it is now: it covers everything that decides the next tick. */
export function markTable({ state, run }: Table): MarkFields {
  const { tick: _descentTick, ...descent } = run.descent.mark();
  const fields = { stage: state.stage, ...descent, table: hashValue(state) };
  return { ...fields, hash: hashValue(fields) };
}
