import type { DealtCard, TableView } from '../../../engine/table/index.ts';
import { DEALT } from '../../text/drill.ts';
import { clock } from '../../text/numbers.ts';
import type { Announcer } from '../announcer.ts';
import { button, element } from '../element.ts';

/** So many lie on the table at a time. */
const MOST_CARDS = 3;

/**
 * Cards that were dealt to this display, laid onto the table beside the seat's own card, each until it is laid aside. What came with a level is an alert, and stands
 * among the alerts instead.
 */
export function createDealtCards(announcer: Announcer): {
  readonly list: HTMLElement;
  refresh(view: TableView): void;
} {
  const list = element('ul', { class: 'dealt', 'aria-label': DEALT.label, hidden: true });
  let shown: readonly string[] = [];
  const aside = new Set<string>();
  const lay = (card: DealtCard): HTMLElement => {
    const node = element(
      'li',
      { class: 'dealt-card' },
      element('small', {}, clock(card.after)),
      element('p', {}, card.text),
      button(
        DEALT.aside,
        () => {
          aside.add(keyOf(card));
          node.remove();
          list.hidden = list.childElementCount === 0;
        },
        { 'aria-label': DEALT.asideFully(card.text) },
      ),
    );
    return node;
  };
  return {
    list,
    refresh({ dealt }) {
      const cards = dealt.filter(({ level }) => level === undefined);
      const keys = cards.map(keyOf);
      if (keys.join() === shown.join()) return;
      // a descent that begins anew deals anew
      if (shown.some((key) => !keys.includes(key))) aside.clear();
      const fresh = cards.filter((card) => !shown.includes(keyOf(card)));
      shown = keys;
      list.replaceChildren(
        ...cards
          .filter((card) => !aside.has(keyOf(card)))
          .slice(-MOST_CARDS)
          .map(lay),
      );
      list.hidden = list.childElementCount === 0;
      for (const card of fresh) announcer.announce(DEALT.aloud(card.text), 'now');
    },
  };
}

function keyOf({ text, after }: DealtCard): string {
  return `${after} ${text}`;
}
