import { element } from './element.ts';

/** Least time between two announcements [ms]: a reader must be able to finish one. */
const PAUSE_MS = 4000;

/** What is told within this time is told together [ms]: a reader would skip what another line takes the place of at once. */
const TOGETHER_MS = 200;

/** Tells people who do not see the sheet what changed, politely and not too often; only the newest waits. */
export class Announcer {
  readonly node: HTMLElement;
  #waiting: string | undefined;
  #last = '';
  #quietUntil = 0;
  #saidAt = -Infinity;

  /** `alert`: breaks into what is being read. */
  constructor(manner: 'status' | 'alert' = 'status') {
    const live = manner === 'alert' ? 'assertive' : 'polite';
    this.node = element('p', { class: 'unseen', role: manner, 'aria-live': live });
  }

  /** `now`: outcomes and refusals do not wait for the pause. */
  announce(words: string, urgency: 'soon' | 'now' = 'soon'): void {
    if (words === this.#last) return;
    this.#waiting = words;
    if (urgency === 'now') this.#quietUntil = 0;
    this.flush();
  }

  /** Another descent has begun: what was said of the last one is so no longer, and may be said again. */
  forget(): void {
    this.#waiting = undefined;
    this.#last = '';
    this.#quietUntil = 0;
    this.node.textContent = '';
  }

  /** Called from time to time; speaks when the pause is over. */
  flush(): void {
    const now = performance.now();
    if (this.#waiting === undefined || now < this.#quietUntil) return;
    const before = now - this.#saidAt < TOGETHER_MS ? `${this.node.textContent} ` : '';
    this.#last = this.#waiting;
    this.node.textContent = before + this.#waiting;
    this.#waiting = undefined;
    this.#saidAt = now;
    this.#quietUntil = now + PAUSE_MS;
  }
}
