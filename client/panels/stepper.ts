import { repeatWhileHeld } from '../controls/repeat.ts';
import { element, say } from './element.ts';
import { Wish } from './wish.ts';

interface Stepper {
  readonly group: HTMLElement;
  /** `said`: what the table has; `isOpen`: it may be changed now. */
  refresh(said: number, isOpen: boolean): void;
  /** One press of either button. */
  step(direction: 1 | -1): void;
}

/** A figure with a button to either side of it that makes it less or more. */
export function createStepper(options: {
  readonly label: string;
  readonly less: string;
  readonly more: string;
  /** Whole steps of the figure; it stays within `range`, and is brought to a multiple of `step`. */
  readonly step: number;
  readonly range: () => { readonly least: number; readonly most: number };
  readonly words: (value: number) => string;
  readonly set: (value: number) => void;
}): Stepper {
  const { step, words } = options;
  const wish = new Wish<number>();
  const value = element('output', {});
  let now = 0;
  const go = (direction: 1 | -1) => {
    const { least, most } = options.range();
    const next = (direction > 0 ? Math.floor(now / step) + 1 : Math.ceil(now / step) - 1) * step;
    now = Math.max(least, Math.min(most, next));
    wish.ask(now);
    say(value, words(now));
    options.set(now);
  };
  const less = stepButton('−', options.less, () => go(-1));
  const more = stepButton('+', options.more, () => go(1));
  return {
    group: element('div', { class: 'stepper', role: 'group', 'aria-label': options.label }, less, value, more),
    refresh(said, isOpen) {
      now = wish.shown(said);
      say(value, words(now));
      for (const key of [less, more]) key.disabled = !isOpen;
    },
    step(direction) {
      if (!more.disabled) go(direction);
    },
  };
}

function stepButton(sign: string, name: string, act: () => void): HTMLButtonElement {
  const node = element('button', { type: 'button', 'aria-label': name }, sign);
  repeatWhileHeld(node, act);
  return node;
}
