import { SEATS, type TableView } from '../../engine/table/index.ts';
import { LEAD_CARD, LOBBY, SEAT_NAMES } from '../text/en.ts';
import { button, element } from './element.ts';
import { createChoice } from './choiceList.ts';
import { cardPart, type Ask } from './seatCard.ts';

/** Nothing is chosen yet. */
const NOBODY = ['', '–'] as const;

/** Lead deals seats: a person and a seat; who sat there changes places. */
export function createDeal(ask: Ask): { readonly part: HTMLElement; refresh(view: TableView): void } {
  const person = createChoice(LEAD_CARD.person);
  const seat = createChoice(LEAD_CARD.seat);
  // one press must not give a seat away that nobody chose
  seat.refresh([NOBODY, ...SEATS.map((one) => [one, SEAT_NAMES[one]] as const)]);
  const deal = button(LEAD_CARD.deal, () => {
    const chosen = SEATS.find((one) => one === seat.value());
    if (chosen !== undefined) ask({ kind: 'deal', member: person.value(), seat: chosen });
  });
  const part = cardPart(LEAD_CARD.dealHead, element('div', { class: 'deal-row' }, person.list, seat.list, deal));
  return {
    part,
    refresh({ you, others }) {
      const crew = others.filter(({ role }) => role === 'crew');
      part.hidden = crew.length === 0;
      person.refresh([
        ...crew.map((other) => [other.id, personWords(other)] as const),
        [you.id, LOBBY.yours(you.name)],
      ]);
    },
  };
}

/** Who somebody is, by name and seat. */
export function personWords({ name, seat }: TableView['others'][number]): string {
  return seat === undefined ? name : `${name} (${SEAT_NAMES[seat]})`;
}
