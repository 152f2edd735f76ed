import { THRUST_RANGE, TILT_RANGE_DEG, type TableView } from '../../engine/table/index.ts';
import { isDry } from '../panels/alerts.ts';
import { button, element, say } from '../panels/element.ts';
import { leanWords } from '../panels/readings.ts';
import { ACTIONS, type Action } from '../settings/keys.ts';
import { CONTROLS, SEAT_NAMES, SETTINGS } from '../text/en.ts';
import { keysOf } from '../text/keyNames.ts';
import { inDegrees, percent } from '../text/numbers.ts';
import type { CommandDesk } from './commands.ts';
import { ACTS } from './keyboard.ts';
import { repeatWhileHeld } from './repeat.ts';
import { createScale } from './scale.ts';

interface ControlPanel {
  readonly panel: HTMLElement;
  /** Marks and figures; `hoverPercent` is the thrust that holds the present speed. */
  refresh(view: TableView, hoverPercent: number): void;
}

/** Thrust and tilt: each a scale to set, buttons for steps, and the key that does the same. */
export function createControlPanel(desk: CommandDesk, maxThrust: number): ControlPanel {
  const thrust = createScale({
    name: CONTROLS.thrust,
    direction: 'upright',
    ...THRUST_RANGE,
    ruling: 5,
    figures: [0, 25, 50, 75, 100].map((value) => ({ value, words: String(value) })),
    tick: CONTROLS.hover,
    set: (value) => desk.thrustTo(value),
  });
  // right is positive on the sheet, counter-clockwise in the engine
  const tilt = createScale({
    name: CONTROLS.tilt,
    direction: 'level',
    ...TILT_RANGE_DEG,
    ruling: 5,
    figures: [-30, -15, 0, 15, 30].map((value) => ({ value, words: String(Math.abs(value)) })),
    set: (value) => desk.tiltTo(-value),
  });
  const thrustValue = element('span', { class: 'control-value' });
  const tiltValue = element('span', { class: 'control-value' });
  const thrustKeys = [
    step(CONTROLS.more, 'thrustMore', CONTROLS.thrustMore, desk),
    step(CONTROLS.less, 'thrustLess', CONTROLS.thrustLess, desk),
    step(CONTROLS.off, 'engineOff', CONTROLS.thrustOff, desk),
  ];
  const tiltKeys = [
    step(CONTROLS.left, 'leanLeft', CONTROLS.leanLeft, desk),
    step(CONTROLS.upright, 'upright', CONTROLS.standUpright, desk),
    step(CONTROLS.right, 'leanRight', CONTROLS.leanRight, desk),
  ];
  const hold = button(CONTROLS.hold, () => desk.toggleHold(), { class: 'hold' });
  const abort = button(CONTROLS.abort, () => desk.ask({ kind: 'abort' }), {
    class: 'abort',
    'aria-label': CONTROLS.abortFully,
  });
  const startOver = button(CONTROLS.again, () => desk.ask({ kind: 'again' }), {
    class: 'start-over',
    'aria-label': CONTROLS.startOver,
  });
  const panel = element(
    'section',
    { class: 'card controls', 'aria-label': CONTROLS.label },
    group(
      'thrust',
      CONTROLS.thrust,
      thrustValue,
      thrust.body,
      thrustKeys.map((key) => key.node),
    ),
    group(
      'tilt',
      CONTROLS.tilt,
      tiltValue,
      tilt.body,
      tiltKeys.map((key) => key.node),
    ),
    element('div', { class: 'controls-foot' }, hold, abort, keyList(), startOver),
  );
  return {
    panel,
    refresh(view, hoverPercent) {
      const { commanded } = desk;
      thrust.show(
        commanded.thrustPercent,
        (100 * view.flight.thrust) / maxThrust,
        percent(commanded.thrustPercent / 100),
      );
      thrust.showTick(hoverPercent);
      const lean = leanWords(commanded.tiltDeg);
      tilt.show(-commanded.tiltDeg, -inDegrees(view.flight.angle), lean);
      const active = view.stage === 'descending';
      const dry = isDry(view);
      thrustValue.classList.toggle('held', dry || !view.you.holds.thrust);
      tiltValue.classList.toggle('held', !view.you.holds.tilt);
      const thrustWords = view.you.holds.thrust ? percent(commanded.thrustPercent / 100) : heldWords(view, 'thrust');
      say(thrustValue, dry ? CONTROLS.tanksDry : thrustWords);
      say(tiltValue, view.you.holds.tilt ? lean : heldWords(view, 'tilt'));
      const answers = active && !dry && !view.aborting && view.you.holds.thrust;
      thrust.allow(answers);
      tilt.allow(active && !view.aborting && view.you.holds.tilt);
      for (const key of thrustKeys) key.show(answers);
      for (const key of tiltKeys) key.show(active && !view.aborting && view.you.holds.tilt);
      say(hold, view.held ? CONTROLS.resume : CONTROLS.hold);
      hold.disabled = !active || view.you.seat === undefined;
      startOver.disabled = !active || !mayStartOver(view);
      abort.disabled = !active || view.aborting || !mayStartOver(view);
    },
  };
}

/** Who may give up a descent that runs, as the table has it: whoever is alone, else Lead, or Flying without a Lead. */
function mayStartOver({ you, seats }: TableView): boolean {
  const others = seats.filter((seat) => seat.name !== undefined && seat.seat !== you.seat);
  if (you.seat === undefined || others.length === 0) return you.seat !== undefined;
  return you.seat === 'lead' || (you.seat === 'flying' && others.every((seat) => seat.seat !== 'lead'));
}

function group(
  kind: string,
  name: string,
  value: HTMLElement,
  scale: HTMLElement,
  keys: readonly HTMLElement[],
): HTMLElement {
  const head = element('p', { class: 'control-head' }, element('strong', {}, name), value);
  const steps = element('div', { class: 'control-steps' }, ...keys);
  return element('div', { class: `control control-${kind}`, role: 'group', 'aria-label': name }, head, scale, steps);
}

interface StepButton {
  readonly node: HTMLButtonElement;
  /** With the key that does the same now. */
  show(isAllowed: boolean): void;
}

/** A step button: its sign, and the key that does the same in small. */
function step(sign: string, action: Action, name: string, desk: CommandDesk): StepButton {
  const node = element('button', { type: 'button', 'aria-label': name, class: 'step' });
  repeatWhileHeld(node, () => ACTS[action](desk));
  const key = element('kbd', { 'aria-hidden': 'true' });
  node.append(element('span', {}, sign), key);
  return {
    node,
    show(isAllowed) {
      node.disabled = !isAllowed;
      say(key, keysOf(action)[0] ?? '');
    },
  };
}

function keyList(): HTMLElement {
  const rows = element('tbody', {});
  // a popover: Escape or a press beside it closes it, and it lies beside the controls
  const sheet = element(
    'div',
    { class: 'card keys-sheet', id: 'keys-sheet', popover: true, role: 'group', 'aria-label': CONTROLS.keys },
    element('table', {}, rows),
    element('p', {}, CONTROLS.legend),
  );
  sheet.addEventListener('beforetoggle', () => rows.replaceChildren(...ACTIONS.map(keyRow)));
  return element(
    'div',
    { class: 'keys' },
    element('button', { type: 'button', popovertarget: 'keys-sheet' }, CONTROLS.keys),
    sheet,
  );
}

function keyRow(action: Action): HTMLElement {
  const keys = keysOf(action).map((key) => element('kbd', {}, key));
  return element(
    'tr',
    {},
    element('td', {}, ...keys.flatMap((key) => [key, ' '])),
    element('td', {}, SETTINGS.actions[action]),
  );
}

function heldWords(view: TableView, control: 'thrust' | 'tilt'): string {
  const holder = view.seats.find((seat) => seat.name !== undefined && seat.holds[control]);
  return holder === undefined ? CONTROLS.standInHolds : CONTROLS.heldBy(SEAT_NAMES[holder.seat]);
}
