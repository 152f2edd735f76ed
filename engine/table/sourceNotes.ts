import type { Failure } from '../drill/index.ts';
import { isSensorFault, type Fault, type VehicleFaultKind } from '../faults/index.ts';
import { SOURCES, type Source } from '../sensors/index.ts';
import { TICK_RATE } from '../world/constants.ts';
import type { TableState } from './tableState.ts';
import type { Defect, SourceFailure } from './scorecardTypes.ts';
import type { NamedCause } from './tableTypes.ts';

/** When sources were doubted and named, by ticks of the descent, and what that comes to once it is over. */

/** Remembers at which tick a source that was accepted `before` no longer is. */
export function noteDoubts(state: TableState, tick: number, before: TableState['judgments']): void {
  for (const source of SOURCES) {
    const isNew = isAccepted(before, source) && !isAccepted(state.judgments, source);
    if (isNew) state.doubts = { ...state.doubts, [source]: [...(state.doubts[source] ?? []), tick] };
  }
}

/** Remembers what Sensors takes for the cause, and at which tick. */
export function nameCause(state: TableState, tick: number, source: Source, cause: NamedCause): void {
  if ((state.named[source] ?? 'nothing') === cause) return;
  state.named = { ...state.named, [source]: cause };
  const of = state.namings[source] ?? {};
  state.namings = { ...state.namings, [source]: { ...of, [cause]: [...(of[cause] ?? []), tick] } };
}

function isAccepted(judgments: TableState['judgments'], source: Source): boolean {
  return (judgments[source] ?? 'accepted') === 'accepted';
}

/** What had gone wrong with the sources by the end, and how long it took until somebody doubted each, and named it rightly. */
export function failuresOf(state: TableState, end: number): readonly SourceFailure[] {
  return onceEach(state.failures).flatMap((fault) => {
    if (!isSensorFault(fault) || fault.fromTick > end) return [];
    const { source, kind, fromTick } = fault;
    const doubted = state.doubts[source]?.find((tick) => tick >= fromTick);
    // in doubt at the end and not since it failed: it was so before
    const after = doubted ?? (isAccepted(state.judgments, source) ? undefined : fromTick);
    // a cause that stood named when it began needs no second word
    const isStanding = state.named[source] === kind && (state.namings[source]?.[kind]?.at(-1) ?? Infinity) < fromTick;
    const named = isStanding ? fromTick : state.namings[source]?.[kind]?.find((tick) => tick >= fromTick);
    return [
      {
        source,
        kind,
        after: fromTick / TICK_RATE,
        ...(after !== undefined && { doubtedAfter: (after - fromTick) / TICK_RATE }),
        ...(named !== undefined && { namedAfter: (named - fromTick) / TICK_RATE }),
      },
    ];
  });
}

/** What else was wrong with the lander, and how long it took until that was answered. */
export function defectsOf({ failures, answered }: TableState, end: number): readonly Defect[] {
  return onceEach(failures).flatMap((fault) => {
    if (isSensorFault(fault) || fault.fromTick > end) return [];
    const { kind, fromTick } = fault;
    const tick = answerTo(kind, answered);
    const isAnswered = tick !== undefined && tick >= fromTick;
    return [
      {
        kind,
        ...('leg' in fault.parameters && { leg: fault.parameters.leg }),
        after: fromTick / TICK_RATE,
        ...(isAnswered && { answeredAfter: (tick - fromTick) / TICK_RATE }),
      },
    ];
  });
}

function answerTo(kind: VehicleFaultKind, answered: TableState['answered']): number | undefined {
  if (kind === 'leak') return answered.lineShut;
  if (kind === 'cutOffFails') return answered.cutOff;
  return kind === 'legSoft' ? answered.facing : undefined;
}

/** In order of time; what was mended for a while and came back is one failure. */
function onceEach(failures: readonly Failure[]): readonly Fault[] {
  const sorted = failures.toSorted((one, other) => one.fault.fromTick - other.fault.fromTick);
  const isFirst = ({ name }: Failure, at: number) =>
    name === undefined || sorted.findIndex((other) => other.name === name) === at;
  return sorted.filter(isFirst).map(({ fault }) => fault);
}
