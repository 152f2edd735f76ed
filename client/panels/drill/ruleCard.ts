import type { BriefView } from '../../../engine/table/index.ts';
import { BRIEF } from '../../text/drill.ts';
import { element } from '../element.ts';

/** Names the card. */
export const RULE_CARD = 'rule-card';

/** The rules of a drill as they stand on their card. */
export function ruleList({ ruleCard }: BriefView): HTMLElement {
  return element('ol', { class: 'rules' }, ...ruleCard.map(({ text }) => element('li', {}, text)));
}

/** What a crew is told before a descent, and what it is to learn from it. */
export function situationPart(drill: BriefView): HTMLElement {
  return element(
    'div',
    {},
    element('h3', {}, BRIEF.situation),
    ...drill.brief.map((words) => element('p', {}, words)),
    element('h3', {}, BRIEF.objectives),
    element('ol', { class: 'objectives' }, ...drill.objectives.map(({ text }) => element('li', {}, text))),
  );
}

/** The rule card one press away: a button, and the card that it lays beside it, with the brief folded under the rules. Escape, or a press elsewhere, takes it back. */
export function ruleCardButton(drill: BriefView): readonly [HTMLElement, HTMLElement] {
  const brief = element('details', { class: 'brief-again' }, element('summary', {}, BRIEF.again));
  // once it is asked for: before the descent the brief lies on its own sheet
  brief.addEventListener('toggle', () => brief.append(situationPart(drill)), { once: true });
  const card = element(
    'div',
    { class: 'card rule-card laid-beside', id: RULE_CARD, popover: true, role: 'group', 'aria-label': BRIEF.rules },
    element('h2', { class: 'card-head' }, BRIEF.rules),
    ruleList(drill),
    brief,
  );
  return [element('button', { type: 'button', popovertarget: RULE_CARD }, BRIEF.rules), card];
}
