import type { TableView } from '../../engine/index.ts';
import { COACH } from '../text/en.ts';
import { adviseFlying, type Advice } from './advice.ts';
import type { Announcer } from './announcer.ts';
import { element, say } from './element.ts';

/** A piece of advice stands at least this long, so that it can be read and done [ms]. */
const STANDS_MS = 2200;
/** What cannot wait. */
const URGENT: readonly Advice['key'][] = ['contact', 'engineOff'];

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
  return {
    strip,
    refresh(view, hoverPercent) {
      strip.hidden = view.stage !== 'descending';
      if (strip.hidden) return;
      const holds = view.you.holds;
      const advice: Advice =
        holds.thrust || holds.tilt
          ? adviseFlying(view, hoverPercent, holds)
          : { key: 'watching', words: COACH.watching };
      const now = performance.now();
      if (key !== undefined && advice.key !== key && now - since < STANDS_MS && !URGENT.includes(advice.key)) return;
      if (advice.key !== key) {
        since = now;
        announcer.announce(advice.words);
      }
      key = advice.key;
      strip.dataset['advice'] = advice.key;
      say(words, advice.words);
    },
  };
}
