import { button, element } from './element.ts';
import { Wish } from './wish.ts';

interface PressedRow<Value extends string> {
  readonly group: HTMLElement;
  /** `said`: what the table has; `isOpen`: it may be changed now. */
  refresh(said: Value, isOpen: boolean): void;
  /** Presses one, as by hand. */
  press(value: Value): void;
  /** Presses the one after what holds now. */
  pressNext(): void;
  /** Has the keyboard at what holds now, or at the one after that which has it. */
  focus(): void;
  focusNext(): void;
}

/** Buttons beside each other of which one is pressed: what holds now. */
export function createPressedRow<Value extends string>(options: {
  readonly label: string;
  /** `fully`: a sentence on what a choice does, where its words alone do not say it. */
  readonly choices: readonly (readonly [value: Value, words: string, fully?: string])[];
  readonly press: (value: Value) => void;
}): PressedRow<Value> {
  const wish = new Wish<Value>();
  let holds = options.choices[0]?.[0];
  const show = (shown: Value) => {
    holds = shown;
    for (const [value, key] of keys) key.setAttribute('aria-pressed', String(value === shown));
  };
  const keys = options.choices.map(([value, words, fully]) => {
    const act = () => {
      wish.ask(value);
      show(value);
      options.press(value);
    };
    const key = button(words, act, { title: fully });
    return [value, key] as const;
  });
  const keyOf = (value: Value | undefined) => keys.find(([own]) => own === value)?.[1];
  const after = (at: number) => keys[(at + 1) % keys.length]?.[1];
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
    press(value) {
      keyOf(value)?.focus();
      keyOf(value)?.click();
    },
    pressNext: () => after(keys.findIndex(([value]) => value === holds))?.click(),
    focus: () => keyOf(holds)?.focus(),
    focusNext() {
      const at = keys.findIndex(([, key]) => key === document.activeElement);
      if (at < 0) keyOf(holds)?.focus();
      else after(at)?.focus();
    },
  };
}
