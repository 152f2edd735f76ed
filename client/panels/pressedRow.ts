import { button, element } from './element.ts';
import { Wish } from './wish.ts';

interface PressedRow<Value extends string> {
  readonly group: HTMLElement;
  /** `said`: what the table has; `isOpen`: it may be changed now. */
  refresh(said: Value, isOpen: boolean): void;
}

/** Buttons beside each other of which one is pressed: what holds now. */
export function createPressedRow<Value extends string>(options: {
  readonly label: string;
  readonly choices: readonly (readonly [value: Value, words: string])[];
  readonly press: (value: Value) => void;
}): PressedRow<Value> {
  const wish = new Wish<Value>();
  const show = (shown: Value) => {
    for (const [value, key] of keys) key.setAttribute('aria-pressed', String(value === shown));
  };
  const keys = options.choices.map(([value, words]) => {
    const key = button(words, () => {
      wish.ask(value);
      show(value);
      options.press(value);
    });
    return [value, key] as const;
  });
  return {
    group: element(
      'div',
      { class: 'pressed-row', role: 'group', 'aria-label': options.label },
      ...keys.map(([, key]) => key),
    ),
    refresh(said, isOpen) {
      show(wish.shown(said));
      for (const [, key] of keys) key.disabled = !isOpen;
    },
  };
}
