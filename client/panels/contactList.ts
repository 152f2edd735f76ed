import type { JudgedContact, Scorecard } from '../../engine/table/index.ts';
import { CALLOUT_WORDS, SCORECARD } from '../text/en.ts';
import { speed } from '../text/numbers.ts';
import { element } from './element.ts';
import { limitWords } from './speedScale.ts';

/** How many contacts are listed at most: the first, the worst and the last are always among them. */
const MOST = 4;

/** Every contact of a descent that met the ground more than once, in order; of many, first, worst and last. */
export function contactList(card: Scorecard): HTMLElement | undefined {
  const { contacts, worst = 0 } = card;
  if (contacts.length < 2) return undefined;
  const shown = contacts
    .map((contact, index) => ({ contact, index }))
    .filter(({ index }) => contacts.length <= MOST || [0, worst, contacts.length - 1].includes(index));
  return element(
    'ol',
    { class: 'contacts' },
    ...shown.map(({ contact, index }) => row(contact, index, index === worst)),
  );
}

function row({ arrival, limit, cause, callout }: JudgedContact, index: number, isWorst: boolean): HTMLElement {
  const name = `${SCORECARD.nth(index + 1)}${SCORECARD.cause[cause]}`;
  const moved = `${speed(Math.abs(arrival.vx))} ${SCORECARD.movedAt}, ${SCORECARD.down(speed(arrival.descentRate))}`;
  const against = limit === undefined ? SCORECARD.limitUnknown : limitWords(limit);
  return element(
    'li',
    { value: index + 1, 'data-callout': callout, ...(isWorst && { 'data-worst': 'true' }) },
    element('strong', {}, isWorst ? `${name} · ${SCORECARD.worst}` : name),
    element('span', {}, `${moved}; ${against}: ${CALLOUT_WORDS[callout]}`),
  );
}
