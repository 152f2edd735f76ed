import type { TableView } from '../../../engine/table/index.ts';
import { REAL_STOP } from '../../text/drill.ts';
import type { Announcer } from '../announcer.ts';
import { button, element, leaveButton, say } from '../element.ts';
import { facilitatorOf } from '../facilitator.ts';
import type { Ask } from '../seatCard.ts';
import { exerciseLine } from '../titleBlock.ts';
import { askFirst } from './askFirst.ts';
import { explained } from '../../terms/term.ts';

export interface RealStop {
  /** On every screen: a press asks, a second one stops everything. It is laid onto the sheet that covers its place, and back. */
  readonly button: HTMLElement;
  /** What asks, and what lies over everything while all stands. */
  readonly sheets: readonly HTMLElement[];
  refresh(view: TableView): void;
}

/** The real-world stop: something outside of the exercise wants everybody. */
export function createRealStop(options: {
  readonly ask: Ask;
  readonly announcer: Announcer;
  readonly leave: () => void;
}): RealStop {
  const { ask, announcer } = options;
  const question = askFirst({
    id: QUESTION,
    title: REAL_STOP.title,
    why: REAL_STOP.why,
    act: REAL_STOP.act,
    no: REAL_STOP.no,
    does: () => ask({ kind: 'stop' }),
  });
  const who = element('p', {});
  const waits = element('p', { class: 'hint' });
  const lift = button(REAL_STOP.lift, () => ask({ kind: 'liftStop' }), { class: 'primary' });
  const end = button(REAL_STOP.end, () => ask({ kind: 'end' }));
  const sheet = element(
    'dialog',
    { class: 'laid-over stopped', 'aria-labelledby': 'stopped-title' },
    element(
      'div',
      { class: 'laid-over-body' },
      element('h2', { id: 'stopped-title', tabindex: -1, autofocus: true }, REAL_STOP.title),
      who,
      element('p', {}, REAL_STOP.stands),
      waits,
    ),
    element(
      'div',
      { class: 'laid-over-foot' },
      element('div', { class: 'sheet-actions' }, lift, end, leaveButton(options.leave)),
      exerciseLine(),
    ),
  );
  // it goes when the stop is lifted, and not before
  sheet.addEventListener('cancel', (event) => event.preventDefault());
  const press = explained(
    element('button', { type: 'button', class: 'real-stop', popovertarget: QUESTION }, REAL_STOP.button),
    'real-world stop',
  );
  const keepInReach = createKeeper(press);
  return {
    button: press,
    sheets: [question, sheet],
    refresh(view) {
      const { stoppedBy, you, stage } = view;
      keepInReach();
      if (stoppedBy === undefined) {
        if (sheet.open) sheet.close();
        return;
      }
      say(who, REAL_STOP.calledBy(stoppedBy));
      say(waits, you.runs ? REAL_STOP.liftHint : REAL_STOP.waits(runnerOf(view)));
      lift.hidden = !you.runs;
      end.hidden = !you.runs || stage !== 'descending';
      if (sheet.open) return;
      if (question.matches(':popover-open')) question.hidePopover();
      sheet.showModal();
      announcer.announce(`${REAL_STOP.title}. ${REAL_STOP.calledBy(stoppedBy)}`, 'now');
    },
  };
}

/** Where the button can be pressed while a sheet lies on the table: at the foot of that sheet, or beside the way back to it. Actions within what the sheet says may be hidden. */
const LAID_OVER = '.over .sheet:not([hidden]) > .sheet-foot > .sheet-actions, .over .back-way';

/** Moves the button there, and back to its own place once nothing covers that. */
function createKeeper(press: HTMLElement): () => void {
  let home: { readonly parent: Element; readonly next: Element | null } | undefined;
  return () => {
    if (home === undefined && press.parentElement !== null)
      home = { parent: press.parentElement, next: press.nextElementSibling };
    if (home === undefined) return;
    const cover = document.querySelector(LAID_OVER);
    const holder = cover ?? home.parent;
    if (press.parentElement === holder) return;
    const hadFocus = document.activeElement === press;
    holder.insertBefore(press, cover === null ? home.next : null);
    if (hadFocus) press.focus({ preventScroll: true });
  };
}

/** Names what asks. */
const QUESTION = 'real-stop';

/** Who may lift it: the facilitator, by name where there is one. */
function runnerOf(view: TableView): string {
  return facilitatorOf(view)?.name ?? REAL_STOP.waitsRunner;
}
