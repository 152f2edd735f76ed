import type { TableView } from '../../engine/table/index.ts';
import { LOBBY } from '../text/en.ts';
import { createChoice } from './choiceList.ts';
import { personWords } from './dealSeats.ts';
import { button, element } from './element.ts';
import type { Ask } from './seatCard.ts';

/** What may be done with the own seat: stand up, or hand it to somebody else at the table. */
export function createOwnSeat(ask: Ask): { readonly part: HTMLElement; refresh(view: TableView): void } {
  const up = button(LOBBY.standUp, () => ask({ kind: 'leaveSeat' }));
  const person = createChoice(LOBBY.handOverTo);
  const give = button(LOBBY.handOver, () => ask({ kind: 'handOver', member: person.value() }));
  const hand = element('span', { class: 'hand-over' }, person.list, give);
  const part = element('details', { class: 'own-seat' }, element('summary', {}, LOBBY.yourSeat), up, hand);
  return {
    part,
    refresh({ you, others }) {
      part.hidden = you.seat === undefined;
      // nobody is moved from a seat of their own but by whoever decides
      const takers = others.filter(({ seat }) => seat === undefined || you.decides);
      hand.hidden = takers.length === 0;
      person.refresh(takers.map((other) => [other.id, personWords(other)]));
    },
  };
}
