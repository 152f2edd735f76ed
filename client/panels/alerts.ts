import type { TableView } from '../../engine/table/index.ts';
import type { AlertView } from '../../engine/talk/index.ts';
import type { Phase } from '../../engine/world/index.ts';
import { ALERT, SOURCE_NAMES } from '../text/en.ts';
import type { Announcer } from './announcer.ts';
import { button, element } from './element.ts';
import { keepFocus } from './keepFocus.ts';
import type { Ask } from './seatCard.ts';

/** Phases in which there is something to burn for. */
const ALOFT: readonly Phase[] = ['approach', 'terminal descent', 'final drop'];

/** Whether the lander is in flight with nothing left to burn. */
export function isDry({ flight }: TableView): boolean {
  return flight.propellant <= 0 && ALOFT.includes(flight.phase);
}

/** The alerts of the own seat, on its card: a shape, how grave, what is the matter, and a press that says it was seen. Said aloud when they come. */
export function createAlertList(
  ask: Ask,
  announcer: Announcer,
): { readonly list: HTMLElement; refresh(view: TableView): void } {
  const list = element('ul', { class: 'alerts', 'aria-label': ALERT.label, hidden: true });
  const lines = new Map<number, AlertLine>();
  const lay = ({ talk, you }: TableView) => {
    const { alerts } = talk;
    for (const [id, { node }] of lines)
      if (alerts.every((alert) => alert.id !== id)) {
        node.remove();
        lines.delete(id);
      }
    for (const alert of alerts) {
      let line = lines.get(alert.id);
      if (line === undefined) {
        line = createAlertLine(alert, () => ask({ kind: 'acknowledge', alert: alert.id }));
        lines.set(alert.id, line);
        list.append(line.node);
        announcer.announce(`${ALERT.levels[alert.level]}: ${alertWords(alert)}.`, 'now');
      }
      line.refresh(alert, you.seat !== undefined);
    }
    list.hidden = alerts.length === 0;
  };
  return {
    list,
    refresh: (view) => keepFocus(list, () => lay(view)),
  };
}

interface AlertLine {
  readonly node: HTMLElement;
  refresh(alert: AlertView, maySay: boolean): void;
}

function createAlertLine(alert: AlertView, acknowledge: () => void): AlertLine {
  const words = alertWords(alert);
  const seen = button(ALERT.acknowledge, acknowledge, { 'aria-label': ALERT.acknowledgeFully(words) });
  const text = element('span', {}, element('strong', {}, `${ALERT.levels[alert.level]}:`), ' ', words);
  const node = element('li', { class: 'own-alert', 'data-level': alert.level }, text, seen);
  return {
    node,
    refresh({ isAcknowledged }, maySay) {
      seen.hidden = isAcknowledged || !maySay;
      node.toggleAttribute('data-seen', isAcknowledged);
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
