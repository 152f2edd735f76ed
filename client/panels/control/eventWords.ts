import type { Drill, EventRow, Trigger } from '../../../engine/drill/index.ts';
import type { RowView, TableView } from '../../../engine/table/index.ts';
import { TICK_RATE } from '../../../engine/world/index.ts';
import { EVENTS } from '../../text/control.ts';
import { clock, degrees, distance, seconds, speed, tenthsOfSeconds } from '../../text/numbers.ts';

/** When an inject comes, as its drill says it. */
export function triggerWords(trigger: Trigger, drill: Drill): string {
  const { triggers, quantities } = EVENTS;
  switch (trigger.on) {
    case 'time':
      return triggers.time(clock(trigger.seconds));
    case 'height':
      return triggers.height(distance(trigger.meters, 0));
    case 'inject': {
      const other = drill.events.find(({ id }) => id === trigger.inject);
      return triggers.after(seconds(trigger.seconds), other?.title ?? trigger.inject);
    }
    case 'state': {
      const what = quantities[trigger.quantity];
      return 'above' in trigger
        ? triggers.above(what, quantityWords(trigger.quantity, trigger.above))
        : triggers.below(what, quantityWords(trigger.quantity, trigger.below));
    }
    case 'hand':
      return triggers.hand;
  }
  return trigger satisfies never;
}

function quantityWords(quantity: (Trigger & { on: 'state' })['quantity'], value: number): string {
  switch (quantity) {
    case 'descentRate':
    case 'drift':
      return speed(value, 1);
    case 'leanDeg':
      return degrees((value * Math.PI) / 180, 0);
    case 'propellantSeconds':
      return seconds(value);
    case 'sinceContact':
      return tenthsOfSeconds(value);
  }
  return quantity satisfies never;
}

/** When a waiting row is due, from the start of the descent or by the height now; nothing where only a state or a hand brings it. */
export interface Due {
  /** From now on [s]. */
  readonly seconds: number;
  /** True height then, if it goes on as now [m]. */
  readonly height: number;
  /** By the height: it goes on otherwise than now. */
  readonly isAbout: boolean;
}

export function dueOf(row: EventRow, at: RowView, control: NonNullable<TableView['control']>): Due | undefined {
  const { truth } = control;
  const rate = -truth.vy;
  const now = truth.tick / TICK_RATE;
  const after = (left: number): Due => ({
    seconds: Math.max(0, left),
    height: Math.max(0, truth.height - rate * Math.max(0, left)),
    isAbout: false,
  });
  if (at.dueIn !== undefined) return after(at.dueIn);
  const { trigger } = row;
  if (trigger.on === 'time') return after(trigger.seconds - now);
  if (trigger.on === 'inject') {
    const since = control.rows.find(({ id }) => id === trigger.inject)?.sentAfter;
    return since === undefined ? undefined : after(since + trigger.seconds - now);
  }
  if (trigger.on !== 'height') return undefined;
  const left = rate > 0.05 ? (truth.height - trigger.meters) / rate : Infinity;
  return { seconds: Math.max(0, left), height: trigger.meters, isAbout: true };
}

/** What has become of a row, in a few words. */
export function stateWords(at: RowView, due: Due | undefined): string {
  switch (at.state) {
    case 'sent':
      return EVENTS.sent(clock(at.sentAfter ?? 0));
    case 'skipped':
      return EVENTS.skipped;
    case 'not needed':
      return EVENTS.needless;
    case 'waiting':
      if (due === undefined || !Number.isFinite(due.seconds)) return EVENTS.waits;
      return due.isAbout
        ? EVENTS.dueAbout(seconds(Math.ceil(due.seconds)))
        : EVENTS.due(seconds(Math.ceil(due.seconds)));
  }
  return at.state satisfies never;
}

/** Which waiting row comes next: the one that is due first, else the first in the list. */
export function nextRow(drill: Drill, control: NonNullable<TableView['control']>): string | undefined {
  const waiting = control.rows.filter(({ state }) => state === 'waiting');
  const dues = waiting.flatMap((at) => {
    const row = drill.events.find(({ id }) => id === at.id);
    const due = row && dueOf(row, at, control);
    return due === undefined || !Number.isFinite(due.seconds) ? [] : [{ id: at.id, seconds: due.seconds }];
  });
  const first = dues.reduce<(typeof dues)[number] | undefined>(
    (best, one) => (best === undefined || one.seconds < best.seconds ? one : best),
    undefined,
  );
  return first?.id ?? waiting[0]?.id;
}
