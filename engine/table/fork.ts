import { VEHICLE_FAULT_SOURCES, type VehiclePart } from '../faults/index.ts';
import type { Source } from '../sensors/index.ts';
import { scorecardOf, type Table } from './table.ts';
import type { Refusal } from './tableTypes.ts';
import type { JudgedDescent } from './scorecardTypes.ts';

/**
 * What can be otherwise in a fork. Source healthy: what failed in it does not fail. Part sound: nothing is wrong with engine, tanks or legs. Source rejected: the crew stops believing it at a moment. Descent rate: ordered at a moment,
 * with the drift taken out, and held to the ground. World, stance: from the start of the descent, which stand-ins fly.
 */
export const CHANGE_KINDS = [
  'source healthy',
  'part sound',
  'source rejected',
  'descent rate',
  'world',
  'stance',
] as const;

/** The one thing that is otherwise in a fork; `faultOfChange` says what each kind takes. */
export interface Change {
  readonly kind: (typeof CHANGE_KINDS)[number];
  /** Of a source that is healthy or rejected. */
  readonly source?: Source;
  readonly part?: VehiclePart;
  /** When, from the start of the descent [s]: of a source rejected and of a descent rate. */
  readonly seconds?: number;
  /** [dm/s] */
  readonly tenths?: number;
  /** Identifier. */
  readonly world?: string;
  /** Distance of the footpads from the long axis, of what it is [%]. */
  readonly percent?: number;
}

/** How far footpads may be moved [%]. */
export const STANCE_RANGE_PERCENT = { least: 50, most: 200 } as const;

const TAKES: Readonly<Record<Change['kind'], readonly (keyof Change)[]>> = {
  'source healthy': ['source'],
  'part sound': ['part'],
  'source rejected': ['source', 'seconds'],
  'descent rate': ['seconds', 'tenths'],
  world: ['world'],
  stance: ['percent'],
};

/** What a change lacks, or has too much; undefined where it is whole. */
export function faultOfChange(change: Change): Refusal | undefined {
  const takes = TAKES[change.kind];
  const has = (['source', 'part', 'seconds', 'tenths', 'world', 'percent'] as const).filter(
    (name) => change[name] !== undefined,
  );
  if (has.length === takes.length && takes.every((name) => has.some((own) => own === name))) return undefined;
  const reason = `What if, with another ${change.kind}: takes ${takes.join(' and ')}; got ${has.join(' and ') || 'nothing'}.`;
  return { code: 'table/what-if', reason };
}

/** A descent as a line over time up to its first contact: a point each `spacing` [s] from its start on. True figures. */
export interface FlownPath {
  readonly spacing: number;
  /** Of the lowest foot over the ground [m]. */
  readonly heights: readonly number[];
  /** Horizontal, positive to the right [m/s]. */
  readonly speeds: readonly number[];
  /** When, from the start [s], and how fast across the ground [m/s] it came to its first contact; absent where it never did. */
  readonly contact?: { readonly after: number; readonly speed: number };
}

/** A descent that was flown again with one thing changed, beside the one that happened. */
export interface Fork {
  readonly change: Change;
  /** From then on the two differ, from the start of the descent [s]. */
  readonly after: number;
  /** Of the descent that was flown again. */
  readonly card: JudgedDescent;
  /** Its last motion [rad], [m/s]. */
  readonly last: { readonly angle: number; readonly vx: number; readonly vy: number };
  readonly happened: FlownPath;
  readonly forked: FlownPath;
}

/** A fork that somebody has to fly, since it takes a second or more: `lay` puts it on the table for everybody to see, `refuse` why there is none. */
export interface WantedFork {
  readonly change: Change;
  readonly lay: (fork: Fork) => void;
  readonly refuse: (reason: string) => void;
}

/** What came of a question that somebody asked: the fork, or why it cannot be flown; neither while it is being flown. */
export interface WhatIf {
  readonly change: Change;
  readonly fork?: Fork;
  readonly refused?: string;
}

/**
 * What is to be flown again of the descent that has come to rest, each said once: by itself, with what failed first in good order; then what was asked, one after the other.
 */
export function wantedFork(table: Table): WantedFork | undefined {
  const { state, run } = table;
  if (state.stage !== 'resolved') return undefined;
  if (!run.forkWanted) {
    run.forkWanted = true;
    const change = firstInOrder(table);
    if (change !== undefined)
      return {
        change,
        // the next descent has a run of its own, and never shows this
        lay: (fork) => void (run.fork = fork),
        refuse: () => undefined,
      };
  }
  const change = state.review.whatIfs[run.whatIfs.length];
  if (change === undefined || run.whatIfs.some((one) => one.fork === undefined && one.refused === undefined))
    return undefined;
  const at = run.whatIfs.length;
  run.whatIfs = [...run.whatIfs, { change }];
  return {
    change,
    lay: (fork) => void (run.whatIfs = run.whatIfs.with(at, { change, fork })),
    refuse: (refused) => void (run.whatIfs = run.whatIfs.with(at, { change, refused })),
  };
}

/** What failed first, in good order: a source, or else a part of the lander. */
function firstInOrder(table: Table): Change | undefined {
  const { failures = [], defects = [] } = scorecardOf(table) ?? {};
  const [failure] = failures;
  if (failure !== undefined) return { kind: 'source healthy', source: failure.source };
  // a leg that is not shown locked flies like any other
  const defect = defects.find(({ kind }) => kind !== 'indicationAbsent');
  return defect && { kind: 'part sound', part: VEHICLE_FAULT_SOURCES[defect.kind] };
}
