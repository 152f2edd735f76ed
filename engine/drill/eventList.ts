import { nextUniform, seedRandom } from '../math/random.ts';
import { TICK_RATE } from '../world/constants.ts';
import type { Display, AlertLevel, Drill, EventRow, StateQuantity, Trigger } from './drill.ts';

/** How the event list of a drill stands in one descent. Plain data. */
export interface EventListState {
  /** The course that the seed picked; undefined where there is but one. */
  readonly course: string | undefined;
  readonly rows: Readonly<Record<string, RowState>>;
  /** What was told to displays, in order. */
  readonly told: readonly Told[];
}

/** not needed: a contingency whose response was seen before it was due. */
export const ROW_STATES = ['waiting', 'sent', 'skipped', 'not needed'] as const;

export interface RowState {
  readonly state: (typeof ROW_STATES)[number];
  /** Ticks of the descent at which it was sent. */
  readonly sentTicks: readonly number[];
  /** True height at which it was sent last [m]. */
  readonly sentHeight?: number;
  /** Where it was put off: the tick of the descent at which it is due; its own trigger counts no more. */
  readonly dueTick?: number;
}

interface Told {
  readonly inject: string;
  readonly text: string;
  readonly to: readonly Display[];
  readonly level?: AlertLevel;
  /** Of the descent. */
  readonly tick: number;
}

/** What triggers look at, all of it true. */
export interface EventFacts {
  /** Of the descent. */
  readonly tick: number;
  /** Of the lowest foot over the ground [m]. */
  readonly height: number;
  readonly quantities: Readonly<Record<StateQuantity, number>>;
}

const WAITING: RowState = { state: 'waiting', sentTicks: [] };

/** The list as a descent begins. The seed picks the course. */
export function firstEvents({ events, courses }: Drill, seed: number): EventListState {
  const picked =
    courses.length === 0
      ? undefined
      : courses[Math.floor(nextUniform(seedRandom(seed, COURSE_STREAM)) * courses.length)];
  const rows = events.filter(({ course }) => course === undefined || course === picked);
  return { course: picked, rows: Object.fromEntries(rows.map(({ id }) => [id, WAITING])), told: [] };
}

/** Draws which course is played, apart from all else that a seed draws. */
const COURSE_STREAM = 91;

/** The rows that are due now, in the order of the list; `isSeen` says whether a response has been carried out. */
export function dueRows(drill: Drill, list: EventListState, facts: EventFacts): readonly EventRow[] {
  return drill.events.filter((row) => {
    const state = list.rows[row.id];
    if (state?.state !== 'waiting') return false;
    if (state.dueTick !== undefined) return facts.tick >= state.dueTick;
    return isTriggered(row.trigger, list, facts);
  });
}

function isTriggered(trigger: Trigger, list: EventListState, { tick, height, quantities }: EventFacts): boolean {
  switch (trigger.on) {
    case 'time':
      return tick >= ticksOf(trigger.seconds);
    case 'height':
      return height <= trigger.meters;
    case 'state': {
      const value = quantities[trigger.quantity];
      return 'above' in trigger ? value > trigger.above : value < trigger.below;
    }
    case 'inject': {
      const sent = list.rows[trigger.inject]?.sentTicks[0];
      return sent !== undefined && tick >= sent + ticksOf(trigger.seconds);
    }
    case 'hand':
      return false;
  }
  return trigger satisfies never;
}

export function sent(
  list: EventListState,
  { id, effects }: EventRow,
  { tick, height }: Pick<EventFacts, 'tick' | 'height'>,
): EventListState {
  const before = list.rows[id] ?? WAITING;
  const tells = effects.flatMap((effect) =>
    effect.do === 'tell'
      ? [{ inject: id, text: effect.text, to: effect.to, tick, ...(effect.level && { level: effect.level }) }]
      : [],
  );
  const row: RowState = { state: 'sent', sentTicks: [...before.sentTicks, tick], sentHeight: height };
  return { ...list, rows: { ...list.rows, [id]: row }, told: [...list.told, ...tells] };
}

export function skipped(list: EventListState, id: string, how: 'skipped' | 'not needed'): EventListState {
  const before = list.rows[id] ?? WAITING;
  return { ...list, rows: { ...list.rows, [id]: { ...before, state: how } } };
}

/** Put off: due so many seconds from now. */
export function delayed(list: EventListState, id: string, dueTick: number): EventListState {
  const before = list.rows[id] ?? WAITING;
  return { ...list, rows: { ...list.rows, [id]: { ...before, dueTick } } };
}

export function ticksOf(seconds: number): number {
  return Math.round(seconds * TICK_RATE);
}
