import { CONDUCTS, type Conduct, type TableView } from '../../../engine/table/index.ts';
import type { CommandDesk } from '../../controls/commands.ts';
import { createPaceButtons } from '../../controls/paceButtons.ts';
import { CONTROL } from '../../text/control.ts';
import { CONTROLS, PHASE_NAMES } from '../../text/en.ts';
import { clock } from '../../text/numbers.ts';
import { askFirst } from '../drill/askFirst.ts';
import { button, element, say } from '../element.ts';
import { createPressedRow } from '../pressedRow.ts';
import { descentSeconds } from '../readings.ts';
import { explained, termed } from '../../terms/term.ts';

/** The clock of a descent and all that is done to it: hold and go on, pace, the way of playing, end, and once more. */
export function createConductCard(
  desk: CommandDesk,
  turn: HTMLElement,
): { readonly card: HTMLElement; refresh(view: TableView): void } {
  const time = element('strong', { class: 'conduct-clock' });
  const state = element('em', {});
  const hold = explained(
    button(CONTROLS.hold, () => desk.toggleHold(), { class: 'primary' }),
    'hold',
  );
  const pace = createPaceButtons(desk);
  const ways = createPressedRow<Conduct>({
    label: CONTROL.ways,
    choices: CONDUCTS.map((conduct) => [conduct, CONTROL.wayNames[conduct]]),
    press: (conduct) => desk.ask({ kind: 'setConduct', conduct }),
  });
  const end = element('button', { type: 'button', popovertarget: END, 'aria-label': CONTROL.endFully }, CONTROL.end);
  const question = askFirst({
    id: END,
    title: CONTROL.endFully,
    why: CONTROL.endWhy,
    act: CONTROL.endAct,
    no: CONTROL.endNo,
    does: () => desk.ask({ kind: 'end' }),
  });
  const again = element(
    'button',
    { type: 'button', popovertarget: AGAIN, 'aria-label': CONTROL.againFully },
    CONTROL.again,
  );
  const repeat = askFirst({
    id: AGAIN,
    title: CONTROL.againFully,
    why: CONTROL.againWhy,
    act: CONTROL.againAct,
    no: CONTROL.endNo,
    does: () => desk.ask({ kind: 'again' }),
  });
  const keys = element('div', { class: 'conduct-keys' }, hold, end, again);
  const card = element(
    'section',
    { class: 'card conduct-card', 'aria-label': CONTROL.conduct },
    element('p', { class: 'card-head' }, time, state),
    keys,
    ways.group,
    pace.row,
    whys(),
    turn,
    question,
    repeat,
  );
  return {
    card,
    refresh(view) {
      const { stage, you, held } = view;
      const isRunning = stage === 'descending';
      say(time, CONTROL.clock(clock(descentSeconds(view))));
      say(state, stateWords(view));
      say(hold, held ? CONTROLS.resume : CONTROLS.hold);
      keys.hidden = !you.runs;
      hold.disabled = !isRunning || view.turn?.laying === true;
      end.disabled = !isRunning;
      again.disabled = stage === 'gathering' || view.startingIn !== undefined;
      ways.refresh(view.conduct, you.runs && stage !== 'resolved');
      pace.refresh(view, you.runs);
    },
  };
}

/** Folded away: one sentence each. */
function whys(): HTMLElement {
  const { title, ...said } = CONTROL.whys;
  return element(
    'details',
    { class: 'conduct-whys' },
    element('summary', {}, title),
    element(
      'div',
      {},
      ...Object.entries(said).map(([way, words]) =>
        element('p', {}, ...(way === 'turns' ? termed(words, 'turns', 'Turns') : [words])),
      ),
    ),
  );
}

/** Names what asks before a descent is ended. */
const END = 'end-descent';
const AGAIN = 'begin-again';

/** Whether time goes on, and where the descent is. */
function stateWords({ stage, held, turn, control, flight }: TableView): string {
  if (stage === 'gathering') return CONTROL.stands;
  if (stage === 'resolved') return CONTROL.rest;
  if (turn?.laying === true) return CONTROL.laying;
  return held ? CONTROL.held : PHASE_NAMES[(control?.truth ?? flight).phase];
}
