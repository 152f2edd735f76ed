import type { Seat } from '../table/tableTypes.ts';
import type { Table } from '../table/table.ts';
import { TICK_RATE } from '../world/constants.ts';
import type { InjectMeasures } from './measures.ts';

/** A moment worth looking at together: proposed from the record, or marked by somebody. */
export interface ReviewMoment {
  readonly kind: (typeof MOMENT_KINDS)[number];
  /** From the start of the descent [s]. */
  readonly after: number;
  /** Of `inject`, `detected` and `isolated`: which. */
  readonly inject?: string;
  readonly seat?: Seat;
  /** Of a bookmark. */
  readonly text?: string;
}

/** lastChance: three seconds before the first contact. wrongCause: a cause was named that was none. */
export const MOMENT_KINDS = [
  'inject',
  'detected',
  'isolated',
  'wrongCause',
  'poll',
  'decision',
  'abort',
  'cutOff',
  'lastChance',
  'contact',
  'bookmark',
] as const;

/** Before a contact there is no more to be done than this [s]. */
const LAST_CHANCE = 3;

/** In the order of time. */
export function momentsOf({ state, run }: Table, measures: readonly InjectMeasures[]): readonly ReviewMoment[] {
  const contact = run.flight.touchdown?.tick;
  const moments: ReviewMoment[] = [
    ...measures.flatMap(({ inject, sentAfter, measures: { detect, isolate } }) => [
      { kind: 'inject' as const, after: sentAfter, inject },
      ...(detect.seconds === undefined
        ? []
        : [{ kind: 'detected' as const, after: sentAfter + detect.seconds, inject }]),
      ...(isolate.seconds === undefined
        ? []
        : [{ kind: 'isolated' as const, after: sentAfter + isolate.seconds, inject }]),
    ]),
    ...state.talk.log.flatMap(({ descentTick, seat, what }): readonly ReviewMoment[] => {
      const kind = MARKS[what.kind] ?? (isWrongCause(state.failures, what, descentTick) ? 'wrongCause' : undefined);
      return kind === undefined ? [] : [{ kind, after: descentTick / TICK_RATE, ...(seat !== undefined && { seat }) }];
    }),
    ...(contact === undefined
      ? []
      : [
          { kind: 'lastChance' as const, after: Math.max(0, contact / TICK_RATE - LAST_CHANCE) },
          { kind: 'contact' as const, after: contact / TICK_RATE },
        ]),
    ...state.review.bookmarks.map(({ descentTick, text }) => ({
      kind: 'bookmark' as const,
      after: descentTick / TICK_RATE,
      text,
    })),
  ];
  return moments.toSorted((one, other) => one.after - other.after);
}

type What = Table['state']['talk']['log'][number]['what'];

const MARKS: Readonly<Partial<Record<What['kind'], ReviewMoment['kind']>>> = {
  callPoll: 'poll',
  decide: 'decision',
  abort: 'abort',
  fireCutOff: 'cutOff',
};

/** A cause was named that nothing in that source had then. */
function isWrongCause(failures: Table['state']['failures'], what: What, tick: number): boolean {
  if (what.kind !== 'nameCause' || what.cause === 'nothing') return false;
  return !failures.some(
    ({ fault }) => fault.source === what.source && fault.kind === what.cause && fault.fromTick <= tick,
  );
}
