import { SEATS, type Seat, type TableView } from '../../engine/table/index.ts';
import { OFFER, LOBBY, SEAT_NAMES } from '../text/en.ts';
import { button, element, say } from './element.ts';

export interface SeatOffer {
  readonly part: HTMLElement;
  refresh(view: TableView): void;
}

/** At rest, for whoever of the crew has no seat, such as somebody who came late: that they watch, and the seats that are free for the next descent. */
export function createSeatOffer(takeSeat: (seat: Seat) => void): SeatOffer {
  const words = element('p', {});
  const keys = SEATS.map((seat) => {
    const name = SEAT_NAMES[seat];
    return [seat, button(name, () => takeSeat(seat), { 'aria-label': LOBBY.takeSeat(name) })] as const;
  });
  const row = element('p', { class: 'seat-offer-keys' }, ...keys.map(([, key]) => key));
  const part = element('section', { class: 'seat-offer', 'aria-label': OFFER.label, hidden: true }, words, row);
  return {
    part,
    refresh({ stage, you, seats }) {
      part.hidden = stage !== 'resolved' || you.role !== 'crew' || you.seat !== undefined;
      if (part.hidden) return;
      const isFree = (seat: Seat) => seats.some((one) => one.seat === seat && one.name === undefined);
      for (const [seat, key] of keys) key.hidden = !isFree(seat);
      row.hidden = !SEATS.some(isFree);
      say(words, row.hidden ? OFFER.noneFree : OFFER.free);
    },
  };
}
