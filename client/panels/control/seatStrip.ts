import { SEATS, type Seat, type TableView } from '../../../engine/table/index.ts';
import { SEAT_STRIP } from '../../text/control.ts';
import { READINGS, SEAT_NAMES } from '../../text/en.ts';
import { element, say } from '../element.ts';
import { type ReadingContext, readingText, SEAT_READINGS } from '../readings.ts';
import { seatState } from '../seatCards.ts';
import { lineWords } from '../talkLog.ts';

/** The five seats as they stand: who sits there, what their display reads, what they said or did last, and how many of their loops are open. */
export function createSeatStrip(context: ReadingContext): {
  readonly strip: HTMLElement;
  refresh(view: TableView): void;
} {
  const cards = SEATS.map((seat) => createSeatLine(seat, context));
  return {
    strip: element('div', { class: 'control-seats' }, ...cards.map(({ card }) => card)),
    refresh(view) {
      for (const card of cards) card.refresh(view);
    },
  };
}

function createSeatLine(
  seat: Seat,
  context: ReadingContext,
): { readonly card: HTMLElement; refresh(view: TableView): void } {
  const who = element('em', {});
  const values = SEAT_READINGS[seat].map((reading) => ({ reading, value: element('dd', {}) }));
  const last = element('p', { class: 'seat-last' });
  const loops = element('p', { class: 'seat-loops' });
  const card = element(
    'section',
    { class: 'card', 'aria-label': SEAT_STRIP.label(SEAT_NAMES[seat]) },
    element('h2', { class: 'card-head' }, element('span', {}, SEAT_NAMES[seat]), who),
    element(
      'dl',
      {},
      ...values.map(({ reading, value }) => element('div', {}, element('dt', {}, READINGS[reading]), value)),
    ),
    last,
    loops,
  );
  return {
    card,
    refresh(view) {
      const sitter = view.seats.find((one) => one.seat === seat);
      if (sitter !== undefined) say(who, seatState(sitter));
      card.toggleAttribute('data-away', sitter?.name !== undefined && !sitter.connected);
      for (const { reading, value } of values) say(value, readingText(reading, view, context));
      say(last, lastWords(view, seat));
      const open = view.talk.open.filter(({ from, to }) => from === seat || to === seat).length;
      say(loops, open === 0 ? '' : SEAT_STRIP.loops(open));
      loops.hidden = open === 0;
    },
  };
}

function lastWords({ talk }: TableView, seat: Seat): string {
  const own = talk.log.filter((line) => line.seat === seat && line.kind !== 'acknowledge');
  const words = own.toReversed().flatMap((line) => lineWords(line, talk.calls));
  return words[0] ?? SEAT_STRIP.nothing;
}
