import { accept, refuse, type Result } from '../result.ts';
import { viewReview, type ReviewView } from '../review/viewReview.ts';
import { applyEntry, createTable, judgeEntry, stepTable, type Scorecard, type Table } from '../table/index.ts';
import { scorecardOf } from '../table/table.ts';
import type { Member } from '../table/tableState.ts';
import { TICK_RATE, type DescentState } from '../world/index.ts';
import { NOT_AS_RECORDED } from './forgetName.ts';
import { markLine } from './keepRecord.ts';
import type { RecordParts, TableRecord } from './record.ts';

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

/** Ticks between two points. */
const POINT_EVERY = 6;

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

/** Refused, in words, where the record does not play again to the bit. */
export function trackRun({ lines }: TableRecord, parts: RecordParts): Result<RunTrack, string> {
  const table = createTable(parts);
  let points: TrackPoint[] = [];
  let { run } = table;
  const look = () => {
    if (table.run !== run) points = [];
    ({ run } = table);
    const { tick } = run.flight;
    const isDue = tick % POINT_EVERY === 0 || table.state.stage === 'resolved';
    if (table.state.stage !== 'gathering' && isDue && points.at(-1)?.truth.tick !== tick) points.push(pointOf(table));
  };
  for (const line of lines) {
    while (table.state.tick < line.tick) {
      stepTable(table);
      look();
    }
    if (line.line === 'entry') {
      if (judgeEntry(table.state, line) !== undefined) return refuse(NOT_AS_RECORDED);
      applyEntry(table, line);
      look();
    } else {
      const mark = markLine(table);
      if (mark.line !== 'mark' || mark.hash !== line.hash) return refuse(NOT_AS_RECORDED);
    }
  }
  const card = scorecardOf(table);
  const review = viewReview(table, READER);
  return accept({ points, ...(card && { card }), ...(review && { review }) });
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
