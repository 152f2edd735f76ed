/** How long what was asked for is shown before the table's own word is believed again [ms]. */
const BELIEVE_AFTER_MS = 500;

/** What somebody asked for, shown at once: until the table says the same, or has stayed silent about it for long enough. */
export class Wish<Value> {
  #asked: { readonly value: Value; readonly until: number } | undefined;

  ask(value: Value): void {
    this.#asked = { value, until: performance.now() + BELIEVE_AFTER_MS };
  }

  /** What to show where the table says this. */
  shown(said: Value): Value {
    const asked = this.#asked;
    if (asked === undefined) return said;
    if (asked.value !== said && performance.now() <= asked.until) return asked.value;
    this.#asked = undefined;
    return said;
  }
}
