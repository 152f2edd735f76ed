import type { Scorecard } from '../../engine/table/index.ts';
import { SCORECARD } from '../text/en.ts';
import { speed } from '../text/numbers.ts';
import { element } from './element.ts';
import { limitWords } from './speedScale.ts';
import { type Deciding, decidingContact, isCrash, namedContacts } from './verdict.ts';

/** The contacts of a descent that met the ground anew, in order: first, worst and last. */
export function contactList(card: Scorecard): HTMLElement | undefined {
  const decided = decidingContact(card)?.index;
  const fell = card.outcome.startsWith('tipped');
  // what came after the contact from which it fell decided nothing
  const named = namedContacts(card).filter(({ index }) => !fell || decided === undefined || index <= decided);
  if (named.length < 2) return undefined;
  return element('ol', { class: 'contacts' }, ...named.map((one) => row(one, card, one.index === decided)));
}

/** Which contact it was, in words: of many only first, worst and last are kept. */
export function contactName({ index }: Deciding, { contacts, contactCount }: Scorecard): string {
  if (index === 0) return SCORECARD.first;
  if (index === 1 && contactCount === contacts.length) return SCORECARD.second;
  return index === contacts.length - 1 ? SCORECARD.last : SCORECARD.later;
}

function row(one: Deciding, card: Scorecard, isDecided: boolean): HTMLElement {
  const { arrival, callout } = one.contact;
  const name = `${contactName(one, card)}${SCORECARD.after[arrival.after]}`;
  const down = SCORECARD.down(speed(Math.max(0, arrival.descentRate)));
  const moved = `${speed(Math.abs(arrival.vx))} ${SCORECARD.movedAt}, ${down}`;
  return element(
    'li',
    { 'data-callout': callout, ...(isDecided && { 'data-worst': 'true' }) },
    element('strong', {}, isDecided ? `${name} · ${decidedWords(card)}` : name),
    element('span', {}, `${moved}; ${isDecided && isCrash(card) ? SCORECARD.tooHard : againstWords(one)}`),
  );
}

/** What a contact has to do with how it ended: one that stands was nowhere decided. */
function decidedWords({ outcome }: Scorecard): string {
  return outcome.startsWith('upright') ? SCORECARD.closest : SCORECARD.decided;
}

function againstWords({ contact: { limit, callout } }: Deciding): string {
  if (limit === undefined) return SCORECARD.limitUnknown;
  return limit.tip === 0 ? SCORECARD.tipsAlways : limitWords(limit) + SCORECARD.against[callout];
}
