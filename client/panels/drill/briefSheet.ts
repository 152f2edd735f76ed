import type { BriefView, Seat, TableView } from '../../../engine/table/index.ts';
import { findLander, findSite } from '../../../levels/index.ts';
import type { TableLink } from '../../net/index.ts';
import { BRIEF, ROLE_NAMES } from '../../text/drill.ts';
import { LOBBY } from '../../text/en.ts';
import { button, element, leaveButton, say } from '../element.ts';
import { facilitatorOf } from '../facilitator.ts';
import { invitation, planWords, type Lobby } from '../lobby.ts';
import type { Ask } from '../seatCard.ts';
import { createSeatRows } from '../seatRows.ts';
import { tableSheet } from '../tableSheet.ts';
import { ruleList, situationPart } from './ruleCard.ts';
import { term } from '../../terms/term.ts';

/** The sheet on which a crew is briefed: what it is about, what to learn, the rules, and a seat for each. */
export function createBrief(options: {
  readonly link: TableLink;
  readonly drill: BriefView;
  readonly takeSeat: (seat: Seat) => void;
  readonly ask: Ask;
  readonly leave: () => void;
}): Lobby {
  const { link, drill, ask } = options;
  const seats = createSeatRows(options.takeSeat, link.kind === 'local');
  const planLine = element('p', { class: 'brief-plan' });
  const others = element('p', { class: 'watching' });
  let isReady = false;
  const ready = button(BRIEF.read, () => ask({ kind: 'setReady', ready: !isReady }), { class: 'brief-ready' });
  const begin = button(LOBBY.begin, () => ask({ kind: 'begin' }), { class: 'primary' });
  const hint = element('p', { class: 'hint' });
  const sheet = tableSheet(
    { kind: 'lobby brief', label: BRIEF.label, actions: [ready, begin, leaveButton(options.leave), hint] },
    element('p', { class: 'sheet-head' }, element('span', {}, term('drill', BRIEF.kind)), planLine),
    element('h2', { tabindex: -1 }, drill.title),
    element(
      'div',
      { class: 'brief-words' },
      situationPart(drill),
      element(
        'div',
        {},
        rulesPart(drill),
        element('h3', { class: 'brief-people' }, term('facilitator, evaluator, observer, room screen', BRIEF.people)),
        seats.list,
        others,
      ),
    ),
    ...(link.code === undefined ? [] : [invitation(link.code)]),
  );
  sheet.hidden = true;
  return {
    sheet,
    refresh(view) {
      sheet.hidden = view.stage !== 'gathering';
      if (sheet.hidden) return;
      const { you } = view;
      seats.refresh(view);
      say(planLine, BRIEF.instruments(planWords(view, flownWords(view))));
      say(others, othersWords(view));
      others.hidden = link.kind === 'local' || others.textContent === '';
      isReady = you.ready;
      ready.hidden = you.role !== 'crew' || link.kind === 'local';
      ready.setAttribute('aria-pressed', String(isReady));
      begin.hidden = !mayBegin(view);
      say(hint, hintWords(view));
    },
  };
}

function rulesPart(drill: BriefView): HTMLElement {
  return element('div', { class: 'rule-card' }, element('h3', {}, term('rule card', BRIEF.rules)), ruleList(drill));
}

/** What is flown, and where. */
function flownWords({ plan }: TableView): string {
  return BRIEF.flown(findLander(plan.landerId)?.name ?? plan.landerId, findSite(plan.siteId)?.name ?? plan.siteId);
}

/** Everybody who has no seat, and what they are here as. */
function othersWords({ you, others }: TableView): string {
  const here = [{ ...you, name: LOBBY.yours(you.name), connected: true }, ...others];
  return here
    .filter(({ seat, connected }) => seat === undefined && connected)
    .map(({ name, role }) => `${name}: ${role === 'crew' ? LOBBY.withoutSeat.toLowerCase() : ROLE_NAMES[role]}`)
    .join(' · ');
}

function mayBegin(view: TableView): boolean {
  return facilitatorOf(view) === undefined ? view.you.seat !== undefined : view.you.role === 'facilitator';
}

function hintWords(view: TableView): string {
  const { you, others } = view;
  const facilitator = facilitatorOf(view);
  const crew = [you, ...others].filter(({ role }) => role === 'crew');
  const read = crew.filter(({ ready }) => ready).length;
  if (you.role === 'facilitator') return BRIEF.ready(read, crew.length);
  if (facilitator !== undefined) return BRIEF.begins(facilitator.name);
  return you.seat === undefined ? LOBBY.beginHint : '';
}
