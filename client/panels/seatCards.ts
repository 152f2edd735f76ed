import { SEATS, type Seat, type SeatView, type TableView } from '../../engine/table/index.ts';
import { LOBBY, READINGS, SEAT_NAMES } from '../text/en.ts';
import type { Term } from '../text/glossary.ts';
import { createAlertList } from './alerts.ts';
import type { Announcer } from './announcer.ts';
import { button, element, say } from './element.ts';
import { createModeration } from './moderation.ts';
import { createNoteLine } from './crewNotes.ts';
import { createOwnSeat } from './ownSeat.ts';
import { marginWords, type ReadingContext, type ReadingName, readingText, SEAT_READINGS } from './readings.ts';
import type { Ask } from './seatCard.ts';
import { term } from '../terms/term.ts';

export interface SeatCards {
  readonly own: HTMLElement;
  readonly others: HTMLElement;
  /** Numerals; a few times a second. */
  refresh(view: TableView): void;
}

/** The member's own card with its readings, and beside it the other seats, quietly. */
export function createSeatCards(options: {
  readonly context: ReadingContext;
  /** For alerts. */
  readonly alertAnnouncer: Announcer;
  readonly takeSeat: (seat: Seat) => void;
  readonly letIn: (member: string) => void;
  readonly ask: Ask;
  /** Alone at a table of one's own, there is nobody else to list. */
  readonly alone: boolean;
}): SeatCards {
  const own = element('section', { class: 'card own-card' });
  const list = element('ul', { class: 'seat-list' });
  const watching = element('p', { class: 'watching' });
  const ownSeat = createOwnSeat(options.ask);
  const moderation = createModeration(options.ask);
  const waiting = element('ul', { class: 'waiting-list', 'aria-label': LOBBY.waiting });
  const others = element(
    'section',
    // in a small window it scrolls, and may have nothing on it that is pressed
    { class: 'card others-card', 'aria-label': LOBBY.seats, tabindex: 0 },
    list,
    ownSeat.part,
    watching,
    waiting,
    moderation.part,
  );
  let shownWaiting = '';
  let shownSeat: Seat | 'observer' | undefined;
  let values: HTMLElement[] = [];
  const margin = element('p', { class: 'own-margin' });
  const alerts = createAlertList(options.ask, options.alertAnnouncer);
  const notes = createNoteLine();

  const buildOwn = (view: TableView) => {
    const seat = view.you.seat ?? 'observer';
    shownSeat = seat;
    const name = seat === 'observer' ? LOBBY.observer : SEAT_NAMES[seat];
    own.setAttribute('aria-label', name);
    const readings = element('dl', { class: 'readings' });
    values = SEAT_READINGS[seat].map((reading) => {
      const value = element('dd', {});
      readings.append(element('div', {}, element('dt', {}, readingName(reading)), value));
      return value;
    });
    const who = options.alone ? LOBBY.you : `${view.you.name}, ${LOBBY.you}`;
    own.replaceChildren(
      element('h2', { class: 'card-head' }, element('span', {}, name), element('em', {}, who)),
      readings,
      margin,
      alerts.list,
      notes.list,
    );
  };

  const rows = new Map<
    Seat,
    { readonly row: HTMLElement; readonly state: HTMLElement; readonly take: HTMLButtonElement }
  >();
  for (const seat of SEATS) {
    const state = element('em', {});
    const take = button(LOBBY.take, () => options.takeSeat(seat), {
      class: 'take',
      'aria-label': LOBBY.takeSeat(SEAT_NAMES[seat]),
    });
    const row = element('li', {}, element('span', {}, SEAT_NAMES[seat]), state, take);
    rows.set(seat, { row, state, take });
    list.append(row);
  }

  const waitingRow = ({ id, name }: TableView['waiting'][number]) =>
    element(
      'li',
      {},
      element('span', {}, name),
      element('em', {}, LOBBY.waits),
      button(LOBBY.letIn, () => options.letIn(id), { class: 'take', 'aria-label': LOBBY.letInName(name) }),
    );

  return {
    own,
    others,
    refresh(view) {
      if ((view.you.seat ?? 'observer') !== shownSeat) buildOwn(view);
      SEAT_READINGS[view.you.seat ?? 'observer'].forEach((reading, index) => {
        const value = values[index];
        if (value !== undefined) say(value, readingText(reading, view, options.context));
      });
      // at rest the scorecard says it, for the contact and not for now
      const words = marginWords(view);
      margin.hidden = view.stage === 'resolved' || words === '';
      say(margin, words);
      margin.dataset['callout'] = view.margin.predicted?.callout ?? 'none';
      alerts.refresh(view);
      notes.refresh(view);
      ownSeat.refresh(view);
      ownSeat.part.hidden ||= options.alone;
      moderation.refresh(view);
      moderation.part.hidden = options.alone;
      watching.hidden = view.watching.length === 0;
      say(watching, `${LOBBY.withoutSeat}: ${view.watching.join(' · ')}`);
      const ids = view.you.seat === undefined ? '' : view.waiting.map(({ id }) => id).join(' ');
      if (ids !== shownWaiting) waiting.replaceChildren(...(ids === '' ? [] : view.waiting.map(waitingRow)));
      shownWaiting = ids;
      waiting.hidden = ids === '';
      for (const seatView of view.seats) {
        const parts = rows.get(seatView.seat);
        if (parts === undefined) continue;
        parts.row.hidden = seatView.seat === view.you.seat;
        say(parts.state, seatState(seatView));
        parts.take.hidden = options.alone || seatView.name !== undefined || !view.you.mayTakeSeat;
      }
    },
  };
}

/** Readings that are terms. */
const READING_TERMS: Partial<Record<ReadingName, Term>> = {
  descentRate: 'descent rate',
  drift: 'drift',
  tilt: 'tilt',
  margin: 'margin',
  used: 'believed',
  toSpot: 'spot',
};

function readingName(reading: ReadingName): HTMLElement | string {
  const name = READING_TERMS[reading];
  return name === undefined ? READINGS[reading] : term(name, READINGS[reading]);
}

/** Who covers a seat, in words. */
export function seatState(seat: SeatView): string {
  if (seat.name === undefined) return LOBBY.standIn;
  return seat.connected ? seat.name : `${seat.name}: ${LOBBY.away}`;
}
