import type { TableView } from '../../engine/table/index.ts';
import { isDry } from '../panels/alerts.ts';
import { element, say } from '../panels/element.ts';
import type { DeskAction } from '../settings/keys.ts';
import { CONTROLS } from '../text/en.ts';
import { keysOf, shortcutsOf } from '../text/keyNames.ts';
import type { CommandDesk } from './commands.ts';
import { ACTS } from './keyboard.ts';
import { repeatWhileHeld } from './repeat.ts';

/** What stands on the panel of controls besides what every descent has, by hand or by orders. */
export interface Controls {
  readonly groups: readonly HTMLElement[];
  /** Marks and figures; `hoverPercent` is the thrust that holds the present speed. */
  refresh(view: TableView, hoverPercent: number): void;
}

/** A control with its name, its value, its scale, and the buttons that step it. */
export function controlGroup(
  kind: string,
  name: string,
  value: HTMLElement,
  scale: HTMLElement,
  steps: readonly StepButton[],
): HTMLElement {
  const head = element('p', { class: 'control-head' }, element('strong', {}, name), value);
  const body = [head, scale, stepRow(steps)];
  return element('div', { class: `control control-${kind}`, role: 'group', 'aria-label': name }, ...body);
}

export function stepRow(steps: readonly StepButton[]): HTMLElement {
  return element('div', { class: 'control-steps' }, ...steps.map(({ node }) => node));
}

interface StepButton {
  readonly node: HTMLButtonElement;
  /** With the key that does the same now. */
  show(isAllowed: boolean): void;
  /** Other words on it, and what it does in full. */
  rename(sign: string, name: string): void;
}

/** A step button: its sign, and the key that does the same in small. */
export function stepButton(sign: string, action: DeskAction, name: string, desk: CommandDesk): StepButton {
  const node = element('button', { type: 'button', 'aria-label': name, class: 'step' });
  repeatWhileHeld(node, () => ACTS[action](desk));
  const words = element('span', {}, sign);
  const key = element('kbd', { 'aria-hidden': 'true' });
  node.append(words, key);
  return {
    node,
    show(isAllowed) {
      node.disabled = !isAllowed;
      const [first = ''] = keysOf(action);
      // drawn by the style sheet: it is no part of what the button is called
      if (key.dataset['key'] === first) return;
      key.dataset['key'] = first;
      node.setAttribute('aria-keyshortcuts', shortcutsOf(action).join(' '));
    },
    rename(otherSign, otherName) {
      say(words, otherSign);
      node.setAttribute('aria-label', otherName);
    },
  };
}

/** Why the engine answers nothing any more; undefined while it answers. */
export function deadWords(view: TableView): string | undefined {
  if (isDry(view)) return CONTROLS.tanksDry;
  return view.engine.cutOff === 'fired' ? CONTROLS.cutOff : undefined;
}
