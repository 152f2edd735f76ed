import type { TableView } from '../../../engine/table/index.ts';
import type { TableLink } from '../../net/index.ts';
import { CONTROL, ROOM } from '../../text/control.ts';
import { ALERT, PHASE_NAMES, SEAT_NAMES, TITLE_BLOCK } from '../../text/en.ts';
import { clock } from '../../text/numbers.ts';
import { alertWords } from '../alerts.ts';
import { createNoteList } from '../crewNotes.ts';
import { createRealStop } from '../drill/realStop.ts';
import { awaitedWords } from '../drill/turnStrip.ts';
import { element, leaveButton, say } from '../element.ts';
import type { LaidTable, LayActions } from '../laidPage.ts';
import { invitation } from '../lobby.ts';
import { descentSeconds, marginWords } from '../readings.ts';
import { addresseeWords, callWords } from '../sentenceWords.ts';
import { exerciseLine } from '../titleBlock.ts';
import { layWatchPage, type WatchContext, type WatchParts } from '../watchPage.ts';

/** The page of a projector in the room: what the crew believes together, large; the clock, what is open, asked and alerted. */
export function layRoomPage(holder: HTMLElement, link: TableLink, first: TableView, actions: LayActions): LaidTable {
  return layWatchPage(holder, link, first, actions, createRoomParts);
}

function createRoomParts({ link, ask, announcer, leave }: WatchContext): WatchParts {
  const stop = createRealStop({ ask, announcer, leave });
  const time = element('strong', {});
  const phase = element('span', {});
  const margin = element('p', { class: 'own-margin' });
  const parts = [createInvitation(link.code), createAlerts(), createLoops(), createPoll(), createCards()];
  const side = element(
    'div',
    { class: 'room-side' },
    element('p', { class: 'room-clock' }, time, phase),
    margin,
    ...parts.map(({ part }) => part),
  );
  const foot = element(
    'footer',
    { class: 'room-foot' },
    exerciseLine(),
    element('span', { class: 'code' }, `${TITLE_BLOCK.code} ${link.code ?? TITLE_BLOCK.solo}`),
    element('div', { class: 'ways' }, stop.button, leaveButton(leave)),
  );
  return {
    kind: 'room',
    nodes: [side, foot, ...stop.sheets],
    covering: [side, foot],
    refresh(view) {
      stop.refresh(view);
      say(time, CONTROL.clock(clock(descentSeconds(view))));
      say(phase, phaseWords(view));
      say(margin, marginWords(view));
      margin.hidden = view.stage !== 'descending' || margin.textContent === '';
      margin.dataset['callout'] = view.margin.predicted?.callout ?? 'none';
      for (const part of parts) part.refresh(view);
    },
  };
}

function phaseWords({ stage, held, turn, flight }: TableView): string {
  if (stage === 'gathering') return CONTROL.stands;
  if (stage === 'resolved') return CONTROL.rest;
  if (turn?.laying === true) return `${CONTROL.laying}. ${awaitedWords(turn)}`;
  return held ? CONTROL.held : PHASE_NAMES[flight.phase];
}

interface RoomPart {
  readonly part: HTMLElement;
  refresh(view: TableView): void;
}

/** A list under its name, away where it has nothing to say. */
function namedList(name: string, linesOf: (view: TableView) => readonly string[]): RoomPart {
  const list = createNoteList();
  const part = element('section', { 'aria-label': name }, element('h2', {}, name), list.list);
  return {
    part,
    refresh(view) {
      const lines = view.stage === 'descending' ? linesOf(view) : [];
      list.show(lines);
      part.hidden = lines.length === 0;
    },
  };
}

/** Before the descent: how to join. */
function createInvitation(code: string | undefined): RoomPart {
  const part = element('div', { class: 'room-invitation' }, ...(code === undefined ? [] : [invitation(code)]));
  return {
    part,
    refresh({ stage }) {
      part.hidden = stage !== 'gathering';
    },
  };
}

function createLoops(): RoomPart {
  return namedList(ROOM.loops, ({ talk }) => {
    const heard = talk.calls.filter(({ isConfirmed }) => !isConfirmed);
    const others = talk.openCount - heard.length;
    return [
      ...heard.map((call) => `${SEAT_NAMES[call.from]} → ${addresseeWords(call.to)}: ${callWords(call)}`),
      ...(others > 0 ? [ROOM.more(others)] : []),
    ];
  });
}

function createPoll(): RoomPart {
  return namedList(ROOM.poll, ({ talk: { poll } }) => {
    if (poll === undefined) return [];
    const asked = poll.question === 'go' ? ROOM.goes : ROOM.stays;
    const answers = poll.answers.map(({ seat, answer }) => `${SEAT_NAMES[seat]}: ${ROOM.answers[answer]}`);
    const open = poll.unanswered.map((seat) => SEAT_NAMES[seat]).join(', ');
    return [
      asked,
      ...(poll.isIn || poll.decision !== undefined ? answers : []),
      ...(open === '' || poll.decision !== undefined ? [] : [ROOM.awaits(open)]),
      ...(poll.decision === undefined ? [] : [ROOM.decided(ROOM.answers[poll.decision])]),
    ];
  });
}

/** So many of the latest cards are shown. */
const MOST_CARDS = 3;

function createCards(): RoomPart {
  return namedList(ROOM.cards, ({ dealt }) =>
    dealt
      .filter(({ level }) => level === undefined)
      .slice(-MOST_CARDS)
      .map(({ text }) => text),
  );
}

/** By shape and word as on the cards of the seats. */
function createAlerts(): RoomPart {
  const list = element('ul', { class: 'alerts' });
  const part = element('section', { 'aria-label': ROOM.alerts }, list);
  let shown = '';
  return {
    part,
    refresh({ talk: { alerts } }) {
      part.hidden = alerts.length === 0;
      const key = alerts.map(({ id }) => id).join(' ');
      if (key === shown) return;
      shown = key;
      list.replaceChildren(
        ...alerts.map((alert) =>
          element(
            'li',
            { class: 'own-alert', 'data-level': alert.level },
            element('span', {}, element('strong', {}, `${ALERT.levels[alert.level]}: `), alertWords(alert)),
          ),
        ),
      );
    },
  };
}
