import type { DescentState } from '../world/descent.ts';
import { throttled } from './engineSettings.ts';
import { believedState } from './instruments.ts';
import { createMemo } from './memo.ts';
import type { LiveMargin } from './scorecardTypes.ts';
import type { Run } from './table.ts';
import type { TableState } from './tableState.ts';

const believedFlight = createMemo<Run, DescentState>();

/** The descent as the crew knows it: believed where it flies by instruments, else true. */
export function flightKnown(run: Run, { commanded, engine }: Pick<TableState, 'commanded' | 'engine'>): DescentState {
  const { instruments, believed, flight } = run;
  if (instruments === undefined || believed === undefined) return flight;
  return believedFlight(run, [believed, commanded, engine], () =>
    believedState(instruments, believed, throttled(commanded, engine)),
  );
}

const lastMargin = createMemo<Run, LiveMargin>();

/** The margin as the crew knew the descent when it was last stepped: worked out when somebody looks. */
export function marginNow(run: Run): LiveMargin {
  return lastMargin(run, [run.known], () => run.gauge(run.known));
}
