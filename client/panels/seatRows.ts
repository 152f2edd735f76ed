import { SEATS, type Seat, type TableView } from '../../engine/table/index.ts';
import { BRIEF } from '../text/drill.ts';
import { LOBBY, SEAT_NAMES, SEAT_TASKS } from '../text/en.ts';
import { button, element, say } from './element.ts';
import { seatState } from './seatCards.ts';

/** Before a descent: the seats with who sits there, a press to take one, and in a drill who has read its brief. */
export function createSeatRows(
  takeSeat: (seat: Seat) => void,
  alone: boolean,
): {
  readonly list: HTMLElement;
  refresh(view: TableView): void;
} {
  const rows = SEATS.map((seat) => {
    const who = element('em', {});
    const take = button(LOBBY.take, () => takeSeat(seat), { 'aria-label': LOBBY.takeSeat(SEAT_NAMES[seat]) });
    const task = element('small', {}, SEAT_TASKS[seat]);
    const row = element('li', {}, element('span', {}, element('strong', {}, SEAT_NAMES[seat]), task), who, take);
    return { seat, who, take, row };
  });
  const own = (view: TableView) => (alone ? LOBBY.you : LOBBY.yours(view.you.name));
  return {
    list: element('ul', { class: 'lobby-seats' }, ...rows.map(({ row }) => row)),
    refresh(view) {
      for (const { seat, who, take, row } of rows) {
        const seatView = view.seats.find((candidate) => candidate.seat === seat);
        const mine = view.you.seat === seat;
        if (seatView !== undefined)
          say(who, `${mine ? own(view) : seatState(seatView)}${alone ? '' : readWords(view, seat)}`);
        row.dataset['mine'] = String(mine);
        take.hidden = mine || seatView?.name !== undefined || !view.you.mayTakeSeat;
      }
    },
  };
}

function readWords({ drill, you, others, seats }: TableView, seat: Seat): string {
  const isTaken = seats.some((one) => one.seat === seat && one.name !== undefined);
  if (drill === undefined || !isTaken) return '';
  const hasRead = you.seat === seat ? you.ready : others.some((other) => other.seat === seat && other.ready);
  return ` · ${hasRead ? BRIEF.readIt : BRIEF.reads}`;
}
