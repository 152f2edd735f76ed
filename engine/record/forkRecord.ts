import { isSensorFault } from '../faults/index.ts';
import { hashValue } from '../math/hashValue.ts';
import { accept, refuse, type Result } from '../result.ts';
import {
  applyEntry,
  createTable,
  judgeDescent,
  judgeEntry,
  noteLine,
  spareSource,
  stepTable,
  type Change,
  type FlownPath,
  type Fork,
  type Seat,
  type Table,
  type TablePlan,
} from '../table/index.ts';
import { TICK_RATE, type DescentState } from '../world/index.ts';
import { markTable } from './markTable.ts';
import { MARK_FIELDS, type MarkField, type RecordLine, type RecordParts, type TableRecord } from './record.ts';

interface ForkParts extends RecordParts {
  readonly other?: TablePlan | undefined;
}

/** A fork to be flown, as plain data: it takes a second or more, so it is flown on a thread of its own. */
export interface ForkRequest {
  readonly record: TableRecord;
  readonly plan: TablePlan;
  readonly change: Change;
  /** Of a change that holds from the start: what is flown then. */
  readonly other?: TablePlan;
}

/** Why a record cannot be forked, and where that shows. */
export interface ForkRefusal {
  readonly code: `record/${'other-setup' | 'not-at-rest' | 'nothing-changed' | 'not-as-recorded'}`;
  readonly reason: string;
}

interface GrowingPath extends FlownPath {
  readonly heights: number[];
  readonly speeds: number[];
  contact?: NonNullable<FlownPath['contact']>;
}

/** From which tick of which descent of a table the change holds: from there on the fork is not what happened. */
interface Parting {
  readonly descent: number;
  readonly tick: number;
  readonly change: Change;
}

interface Flown {
  readonly table: Table;
  readonly path: FlownPath;
  /** The first field in which the last mark is another one than was recorded. */
  readonly differs: MarkField | undefined;
}

/** Ticks between two points of a path. */
const POINT_EVERY = 15;
/** A fork that has not come to rest after so long is stopped [tick]. */
const MOST_TICKS = 20 * 60 * TICK_RATE;

/**
 * Flies the last descent of a record again, with one thing changed. Up to the moment from which the change matters all is as it was. From then on nobody
 * sits at the table, and the stand-ins hold every seat: what people did was an answer to what they were shown, and they would have been shown something
 * else. Refused unless the descent, flown again without the change, ends as it was recorded, to the bit.
 */
export function forkRecord(
  record: TableRecord,
  { plan, model, other }: ForkParts,
  change: Change,
): Result<Fork, ForkRefusal> {
  if (hashValue(plan.setup) !== record.header.plan.setupHash)
    return refuseFork('other-setup', 'The plan is laid out otherwise than when it was recorded.');
  const { lines } = record;
  const happened = flyAgain(lines, { plan, model });
  const { state, run } = happened.table;
  if (happened.differs !== undefined)
    return refuseFork('not-as-recorded', `Flown again it ends otherwise than recorded: ${happened.differs}.`);
  if (state.stage !== 'resolved')
    return refuseFork('not-at-rest', 'The last descent of the record did not come to its end.');
  if (isFromStart(change)) {
    if (other === undefined) return refuseFork('nothing-changed', `There is no other ${change.kind} to fly.`);
    return accept(forkOf(change, 0, happened, flyAlone({ plan: other, model })));
  }
  const tick = partingTick(happened.table, change);
  if (tick === undefined) return refuseFork('nothing-changed', `Nothing failed in the ${change.source}.`);
  if (tick > run.flight.tick) return refuseFork('nothing-changed', 'The descent was over before that.');
  const forked = flyAgain(lines, { plan, model }, { change, tick, descent: state.descents });
  return accept(forkOf(change, tick / TICK_RATE, happened, forked));
}

function forkOf(change: Change, after: number, happened: Flown, forked: Flown): Fork {
  const { flight } = forked.table.run;
  const { angle, vx, vy } = flight;
  return {
    change,
    after,
    card: judgeDescent(forked.table),
    last: { angle, vx, vy },
    happened: happened.path,
    forked: forked.path,
  };
}

function isFromStart({ kind }: Change): boolean {
  return kind === 'world' || kind === 'stance';
}

function refuseFork(what: 'other-setup' | 'not-at-rest' | 'nothing-changed' | 'not-as-recorded', reason: string) {
  return refuse({ code: `record/${what}` as const, reason });
}

/** The first tick of the descent from which on the change matters; undefined where it changes nothing. */
function partingTick({ state: { failures } }: Table, { kind, source, seconds = 0 }: Change): number | undefined {
  if (kind !== 'source healthy') return Math.max(1, Math.round(seconds * TICK_RATE));
  const ticks = failures.flatMap(({ fault }) =>
    isSensorFault(fault) && fault.source === source ? [fault.fromTick] : [],
  );
  return ticks.length === 0 ? undefined : Math.min(...ticks);
}

/** Plays a record; from a parting on the stand-ins fly that descent to its end, with the change made. */
function flyAgain(lines: readonly RecordLine[], parts: RecordParts, parting?: Parting): Flown {
  const table = createTable(parts);
  const { flight: start } = table.run;
  const lastMark = lines.findLast((line) => line.line === 'mark');
  let { run } = table;
  let path = pathFrom(start);
  let differs: MarkField | undefined;
  const isFrom = (tick: number | undefined) =>
    tick !== undefined &&
    table.state.descents === parting?.descent &&
    table.state.stage === 'descending' &&
    table.run.flight.tick >= tick;
  const isAlone = () => isFrom(parting?.tick);
  // a path is of one descent: it begins anew with each
  const follow = () => {
    if (table.run !== run) path = pathFrom(start);
    ({ run } = table);
  };
  const step = () => {
    // the tick in which it would fail is measured otherwise already
    if (parting !== undefined && isFrom(parting.tick - 1)) makeChange(table, parting.change);
    ({ run } = table);
    stepTable(table);
    follow();
    notePoint(table, path);
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
  return { table, path, differs };
}

/** Stand-ins fly another plan from its start to its end. */
function flyAlone(parts: RecordParts): Flown {
  const table = createTable(parts);
  const path = pathFrom(table.run.flight);
  sitDown(table, 'lead');
  applyEntry(table, { tick: table.state.tick, member: STRANGER, content: { kind: 'begin' } });
  leaveToStandIns(table);
  while (table.state.stage === 'descending' && table.run.flight.tick < MOST_TICKS) {
    stepTable(table);
    notePoint(table, path);
  }
  return { table, path, differs: undefined };
}

/** What is otherwise from the next tick on. */
function makeChange(table: Table, { kind, source }: Change): void {
  if (source === undefined) return;
  if (kind === 'source healthy') spareSource(table, source);
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

/** Everybody gets up, and a hold is over. With an ordered descent rate somebody sits at Flying who has ordered it, and nothing more. */
function leaveToStandIns(table: Table, change?: Change): void {
  const { state } = table;
  state.conduct = 'continuous';
  state.turnEndsAt = undefined;
  state.held = false;
  state.stoppedBy = undefined;
  for (const { id } of state.members) applyEntry(table, noteLine(state, id, 'left'));
  if (change?.tenths === undefined) return;
  sitDown(table, 'flying');
  state.orders = { descentRateTenths: change.tenths, across: 'drift', driftTenths: 0, leanDeg: 0 };
}

/** Whoever sits where stand-ins cannot do what is asked; nobody else is there. */
const STRANGER = 'm1000000';

function sitDown(table: Table, seat: Seat): void {
  const { state } = table;
  const of = { tick: state.tick, member: STRANGER };
  applyEntry(table, { ...of, content: { kind: 'joined', name: 'What if', role: 'crew' } });
  applyEntry(table, { ...of, content: { kind: 'takeSeat', seat } });
}
