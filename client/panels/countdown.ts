import type { TableView } from '../../engine/table/index.ts';
import { COUNTDOWN } from '../text/en.ts';
import { seconds } from '../text/numbers.ts';
import type { Announcer } from './announcer.ts';
import { RULE_CARD } from './drill/ruleCard.ts';
import { button, element, say } from './element.ts';
import type { Ask } from './seatCard.ts';

/** Tells everybody that the next descent is about to begin; whoever sits may stop that. */
export function createCountdown(
  ask: Ask,
  announcer: Announcer,
  /** Whether there is a rule card to be read once more. */
  hasRules: boolean,
): { readonly strip: HTMLElement; refresh(view: TableView): void } {
  const words = element('span', {});
  const wait = button(COUNTDOWN.wait, () => ask({ kind: 'wait' }));
  const rules = hasRules ? element('button', { type: 'button', popovertarget: RULE_CARD }, COUNTDOWN.rules) : undefined;
  const strip = element(
    'section',
    { class: 'countdown', 'aria-label': COUNTDOWN.label, hidden: true },
    words,
    rules,
    wait,
  );
  return {
    strip,
    refresh({ startingIn, you }) {
      const isNew = strip.hidden && startingIn !== undefined;
      if (!strip.hidden && startingIn === undefined) announcer.announce(COUNTDOWN.over, 'now');
      strip.hidden = startingIn === undefined;
      if (startingIn === undefined) return;
      const told = COUNTDOWN.begins(seconds(Math.ceil(startingIn)));
      say(words, told);
      // told aloud once: figures that run down would drown all else
      if (isNew) announcer.announce(told, 'now');
      wait.hidden = you.seat === undefined;
    },
  };
}
