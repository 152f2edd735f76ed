import type { Seat, TableView } from '../../engine/table/index.ts';
import type { TableLink } from '../net/index.ts';
import { TURN } from '../text/drill.ts';
import { PHASE_NAMES, SEAT_NAMES, STATUS } from '../text/en.ts';
import { speed } from '../text/numbers.ts';
import type { Announcer } from './announcer.ts';
import { say } from './element.ts';

/** A refusal stays readable this long [ms]. */
const NOTICE_MS = 6000;

export type Note = (words: string, lasts?: 'until told') => void;

/** Quiet words over the table; they go by themselves unless they must stay until the next ones. */
export function createNotice(notice: HTMLElement, announcer: Announcer): Note {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return (words, lasts) => {
    clearTimeout(timer);
    notice.hidden = words === '';
    say(notice, words);
    announcer.announce(words, 'now');
    if (lasts !== 'until told') timer = setTimeout(() => (notice.hidden = true), NOTICE_MS);
  };
}

/** Puts changes of line, hold, phase and margin into words. */
export function createTeller(announcer: Announcer, note: Note): (link: TableLink) => void {
  let state = '';
  let phase = '';
  let callout = '';
  let held = false;
  let seat: Seat | 'none' | undefined;
  return (link) => {
    if (link.state !== state) {
      if (link.state === 'reconnecting')
        note(link.isRestarting === true ? STATUS.restarting : STATUS.reconnecting, 'until told');
      else if (state === 'reconnecting') note(backWords(link));
      state = link.state;
    }
    const view = link.view;
    const sits = view === undefined ? undefined : (view.you.seat ?? 'none');
    // in the lobby everybody sees who sits where
    if (seat !== undefined && sits !== undefined && sits !== seat && view?.stage !== 'gathering')
      note(sits === 'none' ? STATUS.noSeat : STATUS.seat(SEAT_NAMES[sits]));
    seat = sits ?? seat;
    if (view?.stage !== 'descending') return;
    const { predicted } = view.margin;
    if (view.held !== held) announcer.announce(heldWords(view), 'now');
    else if (view.flight.phase !== phase) announcer.announce(PHASE_NAMES[view.flight.phase]);
    else if (predicted !== undefined && predicted.callout !== callout) {
      announcer.announce(STATUS.margin(predicted.callout, speed(predicted.limit)));
    }
    ({ held } = view);
    ({ phase } = view.flight);
    callout = predicted?.callout ?? callout;
  };
}

/** In turns the clock stands for the orders, and nobody resumes it. */
function heldWords({ held, turn }: TableView): string {
  if (!held) return STATUS.resumed;
  return turn?.laying === true ? TURN.laying : STATUS.held;
}

function backWords({ isRestarting, view }: TableLink): string {
  if (isRestarting === true) return STATUS.restarted;
  return view?.you.standInLeft === undefined ? STATUS.connected : STATUS.connectedBack;
}
