import { hashValue } from '../math/hashValue.ts';
import {
  applyEntry,
  createTable,
  judgeEntry,
  noteLine,
  spare,
  stepTable,
  type Change,
  type FlownPath,
  type Seat,
  type Table,
} from '../table/index.ts';
import { TICK_RATE, type DescentState } from '../world/index.ts';
import { markTable } from './markTable.ts';
import { MARK_FIELDS, type MarkField, type RecordLine, type RecordParts } from './record.ts';

/** Descents flown again for a fork: from their record, with a change or without, and by stand-ins alone. */

interface GrowingPath extends FlownPath {
  readonly heights: number[];
  readonly speeds: number[];
  contact?: NonNullable<FlownPath['contact']>;
}

/** From which tick of which descent of a table the change holds. */
interface Parting {
  readonly descent: number;
  readonly tick: number;
  readonly change: Change;
  /** How it flew without the change, tick by tick: whoever sits there stays until it flies otherwise. Absent: they get up at that tick. */
  readonly trail?: readonly DescentState[];
}

export interface Flown {
  readonly table: Table;
  readonly path: FlownPath;
  /** Of the last descent, tick by tick. */
  readonly trail: readonly DescentState[];
  /** At which tick of it the stand-ins took over; absent: nobody got up. */
  readonly alone?: number;
  /** The first field in which the last mark is another one than was recorded. */
  readonly differs: MarkField | undefined;
}

/** Ticks between two points of a path. */
const POINT_EVERY = 15;
/** A fork that has not come to rest after so long is stopped [tick]. */
const MOST_TICKS = 20 * 60 * TICK_RATE;

/** Plays a record; from a parting on the stand-ins fly that descent to its end, with the change made. */
export function flyAgain(lines: readonly RecordLine[], parts: RecordParts, parting?: Parting): Flown {
  const table = createTable(parts);
  const { flight: start } = table.run;
  const lastMark = lines.findLast((line) => line.line === 'mark');
  let { run } = table;
  let path = pathFrom(start);
  let trail: DescentState[] = [];
  let alone = parting?.trail === undefined ? parting?.tick : undefined;
  let differs: MarkField | undefined;
  const isFrom = (tick: number | undefined) =>
    tick !== undefined &&
    table.state.descents === parting?.descent &&
    table.state.stage === 'descending' &&
    table.run.flight.tick >= tick;
  const isAlone = () => isFrom(alone);
  // a path is of one descent: it begins anew with each
  const follow = () => {
    if (table.run !== run) {
      path = pathFrom(start);
      trail = [];
    }
    ({ run } = table);
  };
  const noteParting = () => {
    const { flight } = table.run;
    trail[flight.tick] = flight;
    const known = parting?.trail;
    if (known === undefined || alone !== undefined || !isFrom(parting?.tick)) return;
    if (!movesAs(flight, known[flight.tick])) alone = flight.tick;
  };
  const step = () => {
    // the tick in which it would fail is measured otherwise already
    if (parting !== undefined && isFrom(parting.tick - 1)) makeChange(table, parting.change);
    ({ run } = table);
    stepTable(table);
    follow();
    notePoint(table, path);
    noteParting();
  };
  for (const line of lines) {
    while (table.state.tick < line.tick && !isAlone()) step();
    if (isAlone()) break;
    if (line === lastMark) {
      const mark = markTable(table);
      differs = MARK_FIELDS.find((name) => mark[name] !== lastMark[name]);
    }
    if (line.line === 'mark' || judgeEntry(table.state, line) !== undefined) continue;
    applyEntry(table, line);
    follow();
  }
  if (isAlone()) leaveToStandIns(table, parting?.change);
  while (isAlone() && table.run.flight.tick < MOST_TICKS) step();
  return { table, path, trail, differs, ...(alone !== undefined && { alone }) };
}

/** Whether a lander moves, weighs and pushes as it did, to the bit. */
function movesAs(now: DescentState, then: DescentState | undefined): boolean {
  return then !== undefined && hashValue(motionOf(now)) === hashValue(motionOf(then));
}

function motionOf({ x, y, angle, vx, vy, rate, thrust, propellant }: DescentState): readonly number[] {
  return [x, y, angle, vx, vy, rate, thrust, propellant];
}

/** Stand-ins fly another plan from its start to its end. */
export function flyAlone(parts: RecordParts): Flown {
  const table = createTable(parts);
  const path = pathFrom(table.run.flight);
  sitDown(table, 'lead');
  applyEntry(table, { tick: table.state.tick, member: STRANGERS.lead, content: { kind: 'begin' } });
  leaveToStandIns(table);
  while (table.state.stage === 'descending' && table.run.flight.tick < MOST_TICKS) {
    stepTable(table);
    notePoint(table, path);
  }
  return { table, path, trail: [], differs: undefined };
}

/** What is otherwise from the next tick on. */
function makeChange(table: Table, { kind, source, part }: Change): void {
  if (part !== undefined) spare(table, part);
  if (source === undefined) return;
  if (kind === 'source healthy') spare(table, source);
  // nobody takes it back
  if (kind === 'source rejected') table.state.judgments = { ...table.state.judgments, [source]: 'rejected' };
}

function pathFrom({ height, vx }: DescentState): GrowingPath {
  return { spacing: POINT_EVERY / TICK_RATE, heights: [height], speeds: [vx] };
}

/** Up to the first contact: what comes after it is settling. */
function notePoint({ run: { flight } }: Table, path: GrowingPath): void {
  const { tick, touchdown } = flight;
  if (touchdown !== undefined) path.contact ??= { after: touchdown.tick / TICK_RATE, speed: touchdown.vx };
  if (path.contact !== undefined || tick !== path.heights.length * POINT_EVERY) return;
  path.heights.push(flight.height);
  path.speeds.push(flight.vx);
}

/**
 * Everybody gets up, and a hold is over. At Lead somebody sits who decides nothing: a fork shows what would have come of the descent, not whether it would have been
 * given up. With an ordered descent rate somebody sits at Flying who has ordered it, and nothing more.
 */
function leaveToStandIns(table: Table, change?: Change): void {
  const { state } = table;
  state.conduct = 'continuous';
  state.turnEndsAt = undefined;
  state.held = false;
  state.stoppedBy = undefined;
  for (const { id } of state.members) applyEntry(table, noteLine(state, id, 'left'));
  sitDown(table, 'lead');
  if (change?.tenths === undefined) return;
  sitDown(table, 'flying');
  state.orders = { descentRateTenths: change.tenths, across: 'drift', driftTenths: 0, leanDeg: 0 };
}

/** Who sits where stand-ins are not to do what they would; nobody else is there. */
const STRANGERS = { lead: 'm1000000', flying: 'm1000001' } as const satisfies Partial<Record<Seat, string>>;

function sitDown(table: Table, seat: keyof typeof STRANGERS): void {
  const { state } = table;
  const of = { tick: state.tick, member: STRANGERS[seat] };
  applyEntry(table, { ...of, content: { kind: 'joined', name: 'What if', role: 'crew' } });
  applyEntry(table, { ...of, content: { kind: 'takeSeat', seat } });
}
