import type { TableView } from '../../engine/table/index.ts';
import type { Phase } from '../../engine/world/index.ts';
import { ALERT } from '../text/en.ts';
import { seconds } from '../text/numbers.ts';
import type { Announcer } from './announcer.ts';
import { element } from './element.ts';
import type { ReadingContext } from './readings.ts';

export interface Alert {
  readonly level: 'caution' | 'warning';
  readonly words: string;
}

/** Propellant for less than this at the thrust that holds the speed calls for a caution [s]; common practice, no source. */
const LOW_SECONDS = 20;
/** Phases in which there is something to burn for. */
const ALOFT: readonly Phase[] = ['approach', 'terminal descent', 'final drop'];

/** Whether the lander is in flight with nothing left to burn. */
export function isDry({ flight }: TableView): boolean {
  return flight.propellant <= 0 && ALOFT.includes(flight.phase);
}

/** What every seat has to know now, if anything. `hoverPercent` is the thrust that holds the present speed; more than all does not burn. */
export function alertOf(view: TableView, hoverPercent: number, context: ReadingContext): Alert | undefined {
  const { flight, stage } = view;
  if (stage !== 'descending' || !ALOFT.includes(flight.phase)) return undefined;
  if (isDry(view)) return { level: 'warning', words: ALERT.tanksDry };
  if (view.engine.cutOff === 'fired') return { level: 'warning', words: ALERT.cutOff };
  const burn = (Math.min(100, hoverPercent) / 100) * context.maxThrust * context.burnPerImpulse;
  const left = flight.propellant / burn;
  return left < LOW_SECONDS ? { level: 'caution', words: ALERT.propellantLow(seconds(Math.floor(left))) } : undefined;
}

export interface AlertLine {
  readonly line: HTMLElement;
  refresh(alert: Alert | undefined): void;
}

/** One line on the own card: a shape, how grave it is, and what is the matter. Said aloud once for each level. */
export function createAlertLine(announcer: Announcer): AlertLine {
  const mark = element('strong', {});
  const words = element('span', {});
  const line = element('p', { class: 'own-alert', hidden: true }, mark, ' ', words);
  let level: Alert['level'] | undefined;
  return {
    line,
    refresh(alert) {
      line.hidden = alert === undefined;
      if (alert !== undefined) {
        line.dataset['level'] = alert.level;
        mark.textContent = `${ALERT[alert.level]}:`;
        words.textContent = alert.words;
        if (alert.level !== level) announcer.announce(`${ALERT[alert.level]}: ${alert.words}.`, 'now');
      }
      level = alert?.level;
    },
  };
}
