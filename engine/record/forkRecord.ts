import { isSensorFault } from '../faults/index.ts';
import { hashValue } from '../math/hashValue.ts';
import { accept, refuse, type Result } from '../result.ts';
import { judgeDescent, type Change, type Fork, type Table, type TablePlan } from '../table/index.ts';
import { TICK_RATE } from '../world/index.ts';
import { flyAgain, flyAlone, type Flown } from './flyAgain.ts';
import type { RecordParts, TableRecord } from './record.ts';

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

/**
 * Flies the last descent of a record again, with one thing changed. Up to the moment from which the change matters all is as it was. From then on nobody
 * sits at the table, and the stand-ins hold every seat: what people did was an answer to what they were shown, and they would have been shown something
 * else. A part of the lander that is sound matters from the first tick on in which the lander moves otherwise. Refused unless the descent, flown again without the change, ends as it was recorded, to the bit.
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
  if (change.kind === 'part sound') return forkPart(record, { plan, model }, { change, happened });
  const tick = partingTick(happened.table, change);
  if (tick === undefined) return refuseFork('nothing-changed', `Nothing failed in the ${change.source}.`);
  if (tick > run.flight.tick) return refuseFork('nothing-changed', 'The descent was over before that.');
  const forked = flyAgain(lines, { plan, model }, { change, tick, descent: state.descents });
  return accept(forkOf(change, tick / TICK_RATE, happened, forked));
}

/** With a sound part: people fly on until the lander moves otherwise than it did. */
function forkPart(
  { lines }: TableRecord,
  parts: RecordParts,
  { change, happened }: { readonly change: Change; readonly happened: Flown },
): Result<Fork, ForkRefusal> {
  const { state } = happened.table;
  if (!state.failures.some(({ fault }) => fault.source === change.part))
    return refuseFork('nothing-changed', `Nothing was wrong with the ${change.part}.`);
  const { trail } = happened;
  const forked = flyAgain(lines, parts, { change, tick: 1, descent: state.descents, trail });
  if (forked.alone === undefined)
    return refuseFork('nothing-changed', `With nothing wrong with the ${change.part} it flies just the same.`);
  return accept(forkOf(change, forked.alone / TICK_RATE, happened, forked));
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
