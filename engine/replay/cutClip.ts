import type { ReplayRefusal, TableRecord } from '../record/index.ts';
import { accept, type Result } from '../result.ts';
import { viewAt, type LiveMargin, type Seat, type Table, type TableView } from '../table/index.ts';
import { TICK_RATE, type DescentState } from '../world/index.ts';
import { watchDescent, type ReplayParts } from './watchDescent.ts';

/** A stretch of the last descent [s from its start], as a seat saw it; without one, as the control side did. */
export interface ClipCut {
  readonly from: number;
  readonly to: number;
  readonly seat?: Seat;
}

/** One moment of a clip: what was shown there, and what was so. */
export interface ClipFrame {
  /** From the start of the descent [s]. */
  readonly after: number;
  readonly view: TableView;
  readonly truth: DescentState;
  /** Of the contact that was coming in truth. */
  readonly margin: LiveMargin;
}

/** The views of a stretch of the last descent, ten a second, each the very one that the seat was shown. */
export function cutClip(
  record: TableRecord,
  parts: ReplayParts,
  { from, to, seat }: ClipCut,
): Result<readonly ClipFrame[], ReplayRefusal> {
  const watched = watchDescent(record, parts, (table) => {
    const after = table.run.flight.tick / TICK_RATE;
    return after < from || after > to ? undefined : frameOf(table, seat, after);
  });
  return watched.ok ? accept(watched.value.looks) : watched;
}

function frameOf(table: Table, seat: Seat | undefined, after: number): ClipFrame {
  const { flight, gauge } = table.run;
  return { after, view: viewAt(table, seat), truth: flight, margin: gauge(flight) };
}
