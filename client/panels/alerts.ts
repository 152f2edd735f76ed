import type { TableView } from '../../engine/table/index.ts';
import { ALERT_LEVELS, type AlertView } from '../../engine/talk/index.ts';
import { TICK_RATE, type Phase } from '../../engine/world/index.ts';
import { ALERT, SOURCE_NAMES } from '../text/en.ts';
import type { Announcer } from './announcer.ts';
import { button, element, say } from './element.ts';
import { keepFocus } from './keepFocus.ts';
import type { Ask } from './seatCard.ts';

/** Phases in which there is something to burn for. */
const ALOFT: readonly Phase[] = ['approach', 'terminal descent', 'final drop'];

/** Whether the lander is in flight with nothing left to burn. */
export function isDry({ flight }: TableView): boolean {
  return flight.propellant <= 0 && ALOFT.includes(flight.phase);
}

/** What was told folds to a line after so long of the descent: it is no news any more, and its cause may be gone [ticks]. */
const NEWS_TICKS = 20 * TICK_RATE;

/**
 * The alerts of the own seat, on its card: a shape, how grave, what is the matter, and a press that says it was seen. Said aloud when they come. The gravest that nobody
 * has seen comes first; one that was seen folds to a line.
 */
export function createAlertList(
  ask: Ask,
  announcer: Announcer,
): { readonly list: HTMLElement; refresh(view: TableView): void } {
  const list = element('ul', { class: 'alerts', 'aria-label': ALERT.label, hidden: true });
  const lines = new Map<number, AlertLine>();
  const lay = ({ talk, you, flight }: TableView) => {
    const { alerts } = talk;
    for (const [id, { node }] of lines)
      if (alerts.every((alert) => alert.id !== id)) {
        node.remove();
        lines.delete(id);
      }
    for (const alert of alerts) {
      let line = lines.get(alert.id);
      if (line === undefined) {
        line = createAlertLine(alert, flight.tick, () => ask({ kind: 'acknowledge', alert: alert.id }));
        lines.set(alert.id, line);
        if (!alert.isCleared) announcer.announce(`${ALERT.levels[alert.level]}: ${alertWords(alert)}.`, 'now');
      }
      if (alert.isCleared && !line.node.hasAttribute('data-cleared'))
        announcer.announce(`${ALERT.cleared}: ${alertWords(alert)}.`, 'soon');
      line.refresh(alert, flight.tick, you.seat !== undefined);
    }
    inOrder(list, alerts, lines);
    list.hidden = alerts.length === 0;
  };
  return {
    list,
    refresh: (view) => keepFocus(list, () => lay(view), 'next'),
  };
}

interface AlertLine {
  readonly node: HTMLElement;
  refresh(alert: AlertView, tick: number, maySay: boolean): void;
}

/** What nobody has seen before the rest, what has gone last, then the graver, then the newer. */
function rank({ level, isAcknowledged, isCleared, id }: AlertView): readonly number[] {
  return [isCleared ? 2 : Number(isAcknowledged), ALERT_LEVELS.indexOf(level), -id];
}

/** Moves only what is not in its place: the focus stays. */
function inOrder(list: HTMLElement, alerts: readonly AlertView[], lines: ReadonlyMap<number, AlertLine>): void {
  const sorted = alerts.toSorted((a, b) => {
    const [of, against] = [rank(a), rank(b)];
    const i = of.findIndex((value, at) => value !== against[at]);
    return (of[i] ?? 0) - (against[i] ?? 0);
  });
  for (const [i, { id }] of sorted.entries()) {
    const node = lines.get(id)?.node;
    if (node !== undefined && list.children[i] !== node) list.insertBefore(node, list.children[i] ?? null);
  }
}

function createAlertLine(alert: AlertView, came: number, acknowledge: () => void): AlertLine {
  const words = alertWords(alert);
  const seen = button(ALERT.acknowledge, acknowledge, { 'aria-label': ALERT.acknowledgeFully(words) });
  const kind = element('strong', {});
  const text = element('span', {}, kind, ' ', words);
  const node = element('li', { class: 'own-alert', 'data-level': alert.level }, text, seen);
  return {
    node,
    refresh({ isAcknowledged, isCleared, cause, level }, tick, maySay) {
      say(kind, `${isCleared ? ALERT.cleared : ALERT.levels[level]}:`);
      const isOld = cause === 'told' && tick - came > NEWS_TICKS;
      const isFolded = isAcknowledged || isOld || isCleared;
      seen.hidden = isAcknowledged || isCleared || !maySay;
      node.toggleAttribute('data-cleared', isCleared);
      node.toggleAttribute('data-seen', isFolded);
      // what a line cuts off is there for whoever points at it
      text.title = isFolded ? words : '';
    },
  };
}

/** What is the matter, in words. */
export function alertWords({ cause, source, text, level }: AlertView): string {
  switch (cause) {
    case 'sourceLost':
      return ALERT.sourceLost(source === undefined ? '' : SOURCE_NAMES[source].toLowerCase());
    case 'propellantLow':
      return level === 'warning' ? ALERT.propellantLow.warning : ALERT.propellantLow.caution;
    case 'marginOutside':
    case 'dry':
    case 'cutOff':
      return ALERT[cause];
    case 'told':
      return text ?? '';
  }
  return cause satisfies never;
}
