import type { TableView } from '../../../engine/table/index.ts';
import { TURN } from '../../text/drill.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { seconds } from '../../text/numbers.ts';
import type { Announcer } from '../announcer.ts';
import { createNoteList } from '../crewNotes.ts';
import { button, element, say } from '../element.ts';
import type { Ask } from '../seatCard.ts';
import { laidWords } from './laidWords.ts';

export interface TurnStrip {
  readonly strip: HTMLElement;
  refresh(view: TableView): void;
}

/** In turns, in place of the coach: own orders face down, whose are awaited, and what is left of the turn while it is played. */
export function createTurnStrip(ask: Ask, announcer: Announcer): TurnStrip {
  const state = element('p', { class: 'turn-state' });
  const slips = createNoteList();
  slips.list.classList.add('face-down');
  slips.list.setAttribute('aria-label', TURN.faceDown);
  const awaited = element('p', { class: 'turn-awaited' });
  const left = element('progress', { max: TURN_SECONDS, 'aria-label': TURN.label });
  const takeBack = button(TURN.takeBack, () => ask({ kind: 'takeBack' }), { 'aria-label': TURN.takeBackFully });
  const turnOver = button(TURN.turnOver, () => ask({ kind: 'turnOver' }), {
    class: 'primary',
    'aria-label': TURN.turnOverFully,
  });
  const strip = element(
    'section',
    { class: 'coach turn-strip', 'aria-label': TURN.label, hidden: true },
    state,
    slips.list,
    awaited,
    left,
    element('div', { class: 'turn-actions' }, takeBack, turnOver),
  );
  let wasLaying = true;
  return {
    strip,
    refresh({ turn, you }) {
      strip.hidden = turn === undefined;
      if (turn === undefined) return;
      const { laying, own } = turn;
      if (wasLaying && !laying) announcer.announce(TURN.aloud, 'now');
      wasLaying = laying;
      const standing = you.seat === undefined ? TURN.layingAlone : TURN.laying;
      say(state, laying ? standing : TURN.playing(seconds(Math.ceil(turn.left ?? 0))));
      slips.show(laying ? own.map(laidWords) : []);
      say(awaited, laying ? awaitedWords(turn) : '');
      awaited.hidden = !laying;
      left.hidden = laying;
      left.value = TURN_SECONDS - (turn.left ?? 0);
      takeBack.hidden = !laying || own.length === 0;
      turnOver.hidden = !laying || (you.seat !== 'lead' && you.role !== 'facilitator');
    },
  };
}

/** Of the descent, that a turn plays [s]: engine/table/turns.ts. */
const TURN_SECONDS = 4;

export function awaitedWords({ awaited }: Pick<NonNullable<TableView['turn']>, 'awaited'>): string {
  return awaited.length === 0 ? TURN.allIn : TURN.awaited(awaited.map((seat) => SEAT_NAMES[seat]).join(', '));
}
