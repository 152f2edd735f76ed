import type { Result } from '../../engine/result.ts';
import type { Refusal } from '../../engine/table/index.ts';

/** How long an accepted command is shown before the table's own word is believed again [ms]. */
const BELIEVE_AFTER_MS = 500;

/** A value that was asked for and not yet seen in a view. */
interface Wish {
  readonly value: number;
  /** Infinity until the table has answered. */
  until: number;
}

/** Controls and what is asked of them. */
export type Values<Control extends string> = readonly (readonly [Control, number])[];

/**
 * What was asked for of each control and has not come back yet: shown at once, and forgotten when the table shows the same, refuses, or stays silent
 * about it.
 */
export class Wishes<Control extends string> {
  readonly #wishes = new Map<Control, Wish>();

  /** What to show of a control for which the table shows `seen`. */
  shown(control: Control, seen: number): number {
    const wish = this.#wishes.get(control);
    if (wish === undefined) return seen;
    if (wish.until !== Infinity && (wish.value === seen || performance.now() > wish.until)) {
      this.#wishes.delete(control);
      return seen;
    }
    return wish.value;
  }

  /** Whether just these values are asked for already. */
  has(values: Values<Control>): boolean {
    return values.every(([control, value]) => this.#wishes.get(control)?.value === value);
  }

  /** Shows these until the answer is here, and a little longer where it is a yes. */
  ask(values: Values<Control>, answer: Promise<Result<void, Refusal>>): void {
    const wishes = values.map(([control, value]) => {
      const wish: Wish = { value, until: Infinity };
      this.#wishes.set(control, wish);
      return wish;
    });
    void answer.then(({ ok }) => {
      for (const wish of wishes) wish.until = ok ? performance.now() + BELIEVE_AFTER_MS : 0;
    });
  }
}
