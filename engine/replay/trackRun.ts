import type { TableRecord } from '../record/index.ts';
import { accept, refuse, type Result } from '../result.ts';
import { viewReview, type ReviewView } from '../review/viewReview.ts';
import { createTable, type Scorecard, type Table } from '../table/index.ts';
import { scorecardOf } from '../table/table.ts';
import type { Member } from '../table/tableState.ts';
import { TICK_RATE, type DescentState } from '../world/index.ts';
import { watchDescent, type ReplayParts } from './watchDescent.ts';

/** The last descent of a record, played again: where it was, what was believed, and what was made of it. */
export interface RunTrack {
  /** Ten a second from its start, and the last moment. */
  readonly points: readonly TrackPoint[];
  /** Absent where the descent did not come to its end. */
  readonly card?: Scorecard;
  /** As an evaluator sees it; absent where nothing was flown. */
  readonly review?: ReviewView;
}

export interface TrackPoint {
  /** From the start of the descent [s]. */
  readonly after: number;
  readonly truth: DescentState;
  /** Where the crew took it to be, on its map; absent without instruments. SI units, angle in radians. */
  readonly believed?: Readonly<Record<'x' | 'y' | 'vx' | 'vy' | 'angle', number>>;
}

/** Whoever reads a run afterwards sees all of it. */
const READER: Member = {
  id: 'm0',
  name: '',
  role: 'evaluator',
  ready: false,
  seat: undefined,
  absentSince: undefined,
  letIn: false,
};

const NOT_AS_RECORDED = 'This run does not play again as it was recorded, so it cannot be shown.';

/** Refused, in words, where the record does not play again to the bit. */
export function trackRun(record: TableRecord, parts: ReplayParts): Result<RunTrack, string> {
  const watched = watchDescent(record, parts, pointOf);
  if (!watched.ok || watched.value.divergence !== undefined) return refuse(NOT_AS_RECORDED);
  const { looks, table } = watched.value;
  const { stage, descents } = table.state;
  // every descent of a plan begins alike, and ends at a tick that is looked at by chance only
  const start = descents > 0 ? [pointOf(createTable(parts))] : [];
  const end = stage === 'resolved' ? [pointOf(table)] : [];
  const card = scorecardOf(table);
  const review = viewReview(table, READER);
  return accept({ points: [...start, ...looks, ...end], ...(card && { card }), ...(review && { review }) });
}

function pointOf({ run }: Table): TrackPoint {
  const { flight, believed } = run;
  return {
    after: flight.tick / TICK_RATE,
    truth: flight,
    ...(believed && {
      believed: { x: believed.x, y: believed.y, vx: believed.vx, vy: believed.vy, angle: believed.angle },
    }),
  };
}
