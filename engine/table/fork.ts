import type { Source } from '../sensors/index.ts';
import { scorecardOf, type Table } from './table.ts';
import type { JudgedDescent } from './scorecardTypes.ts';

/** The one thing that is otherwise in a fork. Source healthy: what failed in it does not fail. */
export type Change = { readonly kind: 'source healthy'; readonly source: Source };

export const CHANGE_KINDS = ['source healthy'] as const satisfies readonly Change['kind'][];

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

/** A fork that somebody has to fly, since it takes a second or more: `lay` puts it on the table for everybody to see. */
export interface WantedFork {
  readonly change: Change;
  readonly lay: (fork: Fork) => void;
}

/** What is worth flying again of the descent that has come to rest: with what failed first in good order. Said once a descent. */
export function wantedFork(table: Table): WantedFork | undefined {
  const { state, run } = table;
  if (run.forkWanted || state.stage !== 'resolved') return undefined;
  run.forkWanted = true;
  const [failure] = scorecardOf(table)?.failures ?? [];
  if (failure === undefined) return undefined;
  return {
    change: { kind: 'source healthy', source: failure.source },
    // the next descent has a run of its own, and never shows this
    lay: (fork) => void (run.fork = fork),
  };
}
