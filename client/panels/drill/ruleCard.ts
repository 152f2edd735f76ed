import type { BriefView } from '../../../engine/table/index.ts';
import { BRIEF } from '../../text/drill.ts';
import { element } from '../element.ts';

/** The rules of a drill as they stand on their card. */
export function ruleList({ ruleCard }: BriefView): HTMLElement {
  return element('ol', { class: 'rules' }, ...ruleCard.map(({ text }) => element('li', {}, text)));
}

/** The rule card one press away: a button, and the card that it lays beside it. Escape, or a press elsewhere, takes it back. */
export function ruleCardButton(drill: BriefView): readonly [HTMLElement, HTMLElement] {
  const card = element(
    'div',
    { class: 'card rule-card laid-beside', id: 'rule-card', popover: true, role: 'group', 'aria-label': BRIEF.rules },
    element('h2', { class: 'card-head' }, BRIEF.rules),
    ruleList(drill),
  );
  return [element('button', { type: 'button', popovertarget: 'rule-card' }, BRIEF.rules), card];
}
