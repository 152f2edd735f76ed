import type { Fault, UndatedFault } from '../faults/fault.ts';
import { ticksOf } from './eventList.ts';
import type { Effect, NamedFault } from './drill.ts';

/** What fails in a descent: by what its name is in the drill, where it has one. */
export interface Failure {
  readonly name?: string;
  readonly fault: Fault;
}

/** What fails from the first tick on. */
export function firstFailures(faults: readonly Fault[], named: readonly NamedFault[]): readonly Failure[] {
  return [...faults.map((fault) => ({ fault })), ...named.map(({ name, fault }) => ({ name, fault: dated(fault, 0) }))];
}

/** After an effect that acts from this tick of the descent on. */
export function failuresAfter(failures: readonly Failure[], effect: Effect, fromTick: number): readonly Failure[] {
  switch (effect.do) {
    case 'fail': {
      const toTick = effect.seconds === undefined ? undefined : fromTick + ticksOf(effect.seconds);
      return [...failures, { name: effect.name, fault: dated(effect.fault, fromTick, toTick) }];
    }
    case 'mend':
      return failures.flatMap((failure) => mended(failure, effect, fromTick));
    case 'tell':
      return failures;
  }
  return effect satisfies never;
}

/** Ends here; comes back where it was mended for some seconds only. */
function mended(
  failure: Failure,
  { name, seconds }: Extract<Effect, { do: 'mend' }>,
  fromTick: number,
): readonly Failure[] {
  const { fault } = failure;
  const acts = failure.name === name && (fault.toTick === undefined || fault.toTick > fromTick);
  if (!acts) return [failure];
  const { fromTick: began, toTick, ...undated } = fault;
  const before = began < fromTick ? [{ name, fault: dated(undated, began, fromTick) }] : [];
  const backAt = seconds === undefined ? undefined : fromTick + ticksOf(seconds);
  const after =
    backAt === undefined || (toTick !== undefined && backAt >= toTick)
      ? []
      : [{ name, fault: dated(undated, backAt, toTick) }];
  return [...before, ...after];
}

function dated(fault: UndatedFault, fromTick: number, toTick?: number): Fault {
  return toTick === undefined ? { ...fault, fromTick } : { ...fault, fromTick, toTick };
}
