import type { TableView } from '../../../engine/table/index.ts';
import type { TableLink } from '../../net/index.ts';
import { CONTROL, ROOM } from '../../text/control.ts';
import { BRIEF } from '../../text/drill.ts';
import { PHASE_NAMES, SEAT_NAMES, TITLE_BLOCK } from '../../text/en.ts';
import { clock } from '../../text/numbers.ts';
import { createAlertList } from '../alerts.ts';
import { createNoteList } from '../crewNotes.ts';
import { createRealStop } from '../drill/realStop.ts';
import { awaitedWords } from '../drill/turnStrip.ts';
import { element, leaveButton, say } from '../element.ts';
import type { LaidTable, LayActions } from '../laidPage.ts';
import { invitation } from '../lobby.ts';
import { descentSeconds, marginWords } from '../readings.ts';
import { seatState } from '../seatCards.ts';
import { addresseeWords, callWords } from '../sentenceWords.ts';
import { exerciseLine } from '../titleBlock.ts';
import { layWatchPage, type WatchContext, type WatchParts } from '../watchPage.ts';

/** The page of a projector in the room: what the crew believes together, large; the clock, what is open, asked and alerted. */
export function layRoomPage(holder: HTMLElement, link: TableLink, first: TableView, actions: LayActions): LaidTable {
  return layWatchPage(holder, link, first, actions, createRoomParts);
}

function createRoomParts(context: WatchContext): WatchParts {
  const { link, ask, announcer, leave } = context;
  const stop = createRealStop({ ask, announcer, leave });
  const time = element('strong', {});
  const phase = element('span', {});
  const margin = element('p', { class: 'own-margin' });
  const parts = [
    createInvitation(link.code),
    namedList(BRIEF.people, peopleLines, 'gathering'),
    createAlerts(context),
    createLoops(),
    createPoll(),
    createCards(),
  ];
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

/** A list under its name, in one stage of a table, away where it has nothing to say. */
function namedList(
  name: string,
  linesOf: (view: TableView) => readonly string[],
  stage: TableView['stage'] = 'descending',
): RoomPart {
  const list = createNoteList();
  const part = element('section', { 'aria-label': name }, element('h2', {}, name), list.list);
  return {
    part,
    refresh(view) {
      const lines = view.stage === stage ? linesOf(view) : [];
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

/** Of a drill, whose brief leaves no room for them: who sits where, and has read it. */
function peopleLines({ drill, seats, others }: TableView): readonly string[] {
  if (drill === undefined) return [];
  return seats.map((seat) => {
    const sits = others.find((other) => other.seat === seat.seat);
    const reads = sits === undefined ? '' : ` · ${sits.ready ? BRIEF.readIt : BRIEF.reads}`;
    return `${SEAT_NAMES[seat.seat]}: ${seatState(seat)}${reads}`;
  });
}

function createLoops(): RoomPart {
  return namedList(ROOM.loops, ({ talk }) => {
    const heard = talk.calls.filter(({ isConfirmed }) => !isConfirmed);
    const others = talk.openCount - heard.length;
    return [
      ...heard.map((call) => `${SEAT_NAMES[call.from]} → ${addresseeWords(call.to)}: ${callWords(call)}`),
      ...(others > 0 ? [ROOM.between(others, heard.length > 0)] : []),
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

/** By shape and word as on the cards of the seats; nobody presses anything here. */
function createAlerts({ ask, announcer }: WatchContext): RoomPart {
  const alerts = createAlertList(ask, announcer);
  const part = element('section', { 'aria-label': ROOM.alerts }, alerts.list);
  return {
    part,
    refresh(view) {
      part.hidden = view.talk.alerts.length === 0;
      alerts.refresh(view);
    },
  };
}
