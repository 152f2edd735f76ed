import type { FlightMode, TableView } from '../../engine/table/index.ts';
import { HIGH_TILT, LOW_TILT, TILT_TAPER } from '../../engine/descent/index.ts';
import { button, element, say } from '../panels/element.ts';
import { facilitatorOf } from '../panels/facilitator.ts';
import { ACTIONS_OF, actionsFor, type Action } from '../settings/keys.ts';
import type { CardActs } from './keyboard.ts';
import { CONTROLS, ORDERS, SETTINGS } from '../text/en.ts';
import { keysOf } from '../text/keyNames.ts';
import { distance } from '../text/numbers.ts';
import { createAbortButton } from './abortButton.ts';
import type { CommandDesk } from './commands.ts';
import { createHandControls } from './handControls.ts';
import { createOrderControls } from './orderControls.ts';
import { createPaceButtons } from './paceButtons.ts';

interface ControlPanel {
  readonly panel: HTMLElement;
  readonly acts: Pick<CardActs, 'abort' | 'paceSlower' | 'paceFaster'>;
  /** Marks and figures; `hoverPercent` is the thrust that holds the present speed. */
  refresh(view: TableView, hoverPercent: number): void;
}

/** What is set by hand, or ordered; the pace of the clock; and what is asked of the whole descent. */
export function createControlPanel(desk: CommandDesk, maxThrust: number, mode: FlightMode): ControlPanel {
  const controls = mode === 'by orders' ? createOrderControls(desk) : createHandControls(desk, maxThrust);
  const pace = createPaceButtons(desk);
  const hold = button(CONTROLS.hold, () => desk.toggleHold(), { class: 'hold' });
  const abort = createAbortButton(() => desk.ask({ kind: 'abort' }));
  const startOver = button(CONTROLS.again, () => desk.ask({ kind: 'again' }), {
    class: 'start-over',
    'aria-label': CONTROLS.startOver,
  });
  let you: TableView['you'] | undefined;
  const panel = element(
    'section',
    { class: 'card controls', 'aria-label': CONTROLS.label, 'data-mode': mode },
    ...controls.groups,
    pace.row,
    element(
      'div',
      { class: 'controls-foot' },
      hold,
      ...abort.nodes,
      keyList(mode, () => you),
      startOver,
    ),
  );
  return {
    panel,
    acts: {
      abort: () => abort.press(),
      paceSlower: () => pace.step('slower'),
      paceFaster: () => pace.step('faster'),
    },
    refresh(view, hoverPercent) {
      ({ you } = view);
      controls.refresh(view, hoverPercent);
      const active = view.stage === 'descending';
      pace.refresh(view, view.you.runs);
      say(hold, view.held ? CONTROLS.resume : CONTROLS.hold);
      hold.disabled = !active || view.you.seat === undefined || mayNotGoOn(view);
      startOver.disabled = !active || !view.you.runs || view.startingIn !== undefined;
      abort.refresh(active && !view.aborting && view.you.decides);
    },
  };
}

/** Where somebody else runs the table, it is they who go on; in turns they are turned over instead. */
function mayNotGoOn(view: TableView): boolean {
  return view.turn?.laying === true || (view.held && facilitatorOf(view) !== undefined);
}

/** What the keys do for whoever sits here. */
function keyList(mode: FlightMode, you: () => TableView['you'] | undefined): HTMLElement {
  const isByOrders = mode === 'by orders';
  const rows = element('tbody', {});
  const legend = element('p', {});
  // a popover: Escape or a press beside it closes it, and it lies beside the controls
  const sheet = element(
    'div',
    { class: 'card keys-sheet', id: 'keys-sheet', popover: true, role: 'group', 'aria-label': CONTROLS.keys },
    element('table', {}, rows),
    legend,
  );
  sheet.addEventListener('beforetoggle', () => {
    const person = you();
    const unused: readonly Action[] = [
      ...(isByOrders ? [] : (['driftOrLean'] as const)),
      ...(person?.decides === true ? [] : ACTIONS_OF.decides),
    ];
    const actions = actionsFor(person?.seat).filter((action) => !unused.includes(action));
    const words = isByOrders ? { ...SETTINGS.actions, ...ORDERS.actions } : SETTINGS.actions;
    legend.hidden = person?.seat !== 'flying';
    rows.replaceChildren(...actions.map((action) => keyRow(action, words[action])));
    const [low, high] = TILT_TAPER;
    const limits = ORDERS.leanLimits(HIGH_TILT, distance(high, 0), LOW_TILT, distance(low, 0));
    say(legend, isByOrders ? `${ORDERS.legend} ${limits}` : CONTROLS.legend);
  });
  return element(
    'div',
    { class: 'keys' },
    element('button', { type: 'button', popovertarget: 'keys-sheet' }, CONTROLS.keys),
    sheet,
  );
}

function keyRow(action: Action, words: string): HTMLElement {
  const keys = keysOf(action).map((key) => element('kbd', {}, key));
  return element('tr', {}, element('td', {}, ...keys.flatMap((key) => [key, ' '])), element('td', {}, words));
}
