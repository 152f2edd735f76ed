import type { TableView } from '../../engine/index.ts';
import { COACH } from '../text/en.ts';
import { adviseFlying, type Advice } from './advice.ts';
import type { Announcer } from './announcer.ts';
import { element, say } from './element.ts';

/** A piece of advice stands at least this long, so that it can be read and done [ms]. */
const STANDS_MS = 2200;
/** What cannot wait. */
const URGENT: readonly Advice['key'][] = ['contact', 'engineOff', 'held'];
/** Whoever sits down for the first time is told the controls before anything else, for this long [ticks]. */
const WELCOME_TICKS = 210;

export interface Coach {
  readonly strip: HTMLElement;
  refresh(view: TableView, hoverPercent: number): void;
}

/** A strip of paper on the table that says the one thing to do now. */
export function createCoach(announcer: Announcer): Coach {
  const words = element('p', {});
  const strip = element('section', { class: 'coach', 'aria-label': COACH.label }, words);
  let key: Advice['key'] | undefined;
  let since = 0;
  let descents = 0;
  let lastTick = Infinity;

  const adviceNow = (view: TableView, hoverPercent: number): Advice => {
    if (view.held) return { key: 'held', words: COACH.held };
    const { holds } = view.you;
    if (!holds.thrust && !holds.tilt) {
      const pilot = view.seats.find((seat) => seat.seat === 'flying')?.name;
      const words = pilot === undefined ? COACH.watching : COACH.crewFlies(pilot);
      return { key: 'watching', words };
    }
    const isFirst = descents <= 1 && view.flight.tick < WELCOME_TICKS;
    return isFirst && holds.thrust && holds.tilt
      ? { key: 'welcome', words: COACH.welcome }
      : adviseFlying(view, hoverPercent, holds);
  };

  return {
    strip,
    refresh(view, hoverPercent) {
      strip.hidden = view.stage !== 'descending';
      if (strip.hidden) return;
      if (view.flight.tick < lastTick) descents += 1;
      lastTick = view.flight.tick;
      const advice = adviceNow(view, hoverPercent);
      const now = performance.now();
      const isNew = advice.key !== key;
      if (key !== undefined && isNew && now - since < STANDS_MS && !URGENT.includes(advice.key)) return;
      if (isNew) {
        since = now;
        announcer.announce(advice.words);
      }
      key = advice.key;
      strip.dataset['advice'] = advice.key;
      say(words, advice.words);
    },
  };
}
