import type { Drill, EventRow } from '../../../engine/drill/index.ts';
import type { RowView } from '../../../engine/table/index.ts';
import { EVENTS } from '../../text/control.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { seconds } from '../../text/numbers.ts';
import { button, element, say } from '../element.ts';
import type { Ask } from '../seatCard.ts';
import { stateWords, triggerWords, type Due } from './eventWords.ts';

export interface EventRowPart {
  readonly id: string;
  readonly node: HTMLElement;
  refresh(at: RowView, due: Due | undefined, how: { readonly isNext: boolean; readonly mayDeal: boolean }): void;
}

/** By how much one press puts an inject off [s]. */
const DELAY_S = 10;

/** One inject on the strip: what it is and when it comes; opened, what is so and what is expected of whom. */
export function createEventRow(row: EventRow, drill: Drill, ask: Ask): EventRowPart {
  const { id, title } = row;
  const state = element('em', {});
  const seen = element('small', { class: 'event-seen' });
  const body = element('div', { class: 'event-body', hidden: true });
  const head = element(
    'button',
    { type: 'button', class: 'event-head', 'aria-expanded': 'false' },
    element('strong', {}, title),
    state,
    element(
      'small',
      {},
      triggerWords(row.trigger, drill),
      row.kind === 'contingency' ? `, ${EVENTS.kinds.contingency}` : '',
    ),
    seen,
  );
  head.addEventListener('click', () => {
    body.hidden = !body.hidden;
    head.setAttribute('aria-expanded', String(!body.hidden));
  });
  const send = button(EVENTS.send, () => ask({ kind: 'sendInject', inject: id }), { class: 'primary' });
  const skip = button(EVENTS.skip, () => ask({ kind: 'skipInject', inject: id }), {
    'aria-label': EVENTS.skipFully(title),
  });
  const delay = button(EVENTS.delay, () => ask({ kind: 'delayInject', inject: id, seconds: DELAY_S }), {
    'aria-label': EVENTS.delayFully(title),
  });
  const acts = element('div', { class: 'event-acts' }, send, skip, delay);
  const responses = createResponses(row);
  body.append(
    element('p', {}, element('b', {}, `${EVENTS.groundTruth}: `), row.groundTruth),
    element('p', {}, element('b', {}, `${EVENTS.visible}: `), row.visible),
    responses.part,
    ...(row.note === undefined ? [] : [element('p', {}, element('b', {}, `${EVENTS.note}: `), row.note)]),
  );
  const node = element('li', { class: 'event-row' }, head, acts, body);
  return {
    id,
    node,
    refresh(at, due, { isNext, mayDeal }) {
      node.dataset['state'] = at.state;
      node.toggleAttribute('data-next', isNext);
      say(state, stateWords(at, due));
      const isSent = at.state === 'sent';
      say(seen, isSent ? EVENTS.seenOf(at.seen.length, row.responses.length) : '');
      acts.hidden = !mayDeal || !(isNext || !body.hidden);
      say(send, isSent ? EVENTS.sendAgain : EVENTS.send);
      send.setAttribute('aria-label', isSent ? EVENTS.sendAgainFully(title) : EVENTS.sendFully(title));
      skip.hidden = at.state !== 'waiting';
      delay.hidden = at.state !== 'waiting';
      responses.refresh(at);
    },
  };
}

/** What is expected of whom, with a tick where it was seen. */
function createResponses(row: EventRow): { readonly part: HTMLElement; refresh(at: RowView): void } {
  const lines = row.responses.map(({ id, seat, text, within, seen }) => {
    const state = element('em', {});
    const words = EVENTS.within(SEAT_NAMES[seat], text, seconds(within));
    return { id, isForPeople: seen.by === 'evaluator', state, line: element('li', {}, `${words} `, state) };
  });
  return {
    part: element(
      'div',
      {},
      element('b', {}, EVENTS.responses),
      element('ul', { class: 'event-responses' }, ...lines.map(({ line }) => line)),
    ),
    refresh(at) {
      for (const { id, isForPeople, state, line } of lines) {
        const hit = at.seen.find(({ response }) => response === id);
        line.toggleAttribute('data-seen', hit !== undefined);
        const after = hit && seconds(hit.after - (at.sentAfter ?? hit.after));
        const open = isForPeople ? EVENTS.forPeople : EVENTS.notSeen;
        say(state, after === undefined ? (at.state === 'sent' ? open : '') : EVENTS.seenAfter(after));
      }
    },
  };
}
