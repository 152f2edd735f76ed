import { TICK_MS } from './ticker.ts';

/** The clock on the wall of one room, in steps: sixty a second, whatever the pace of the descent. */
export class RoomClock {
  #steps = 0;
  /** Step at which somebody last asked for something. */
  #askedAt = 0;
  /** Share of the next tick of the table that has passed [-]. */
  #passed = 0;

  /** That the room has made so far. */
  get steps(): number {
    return this.#steps;
  }

  /** Since somebody last asked for something [min]. */
  get idleMinutes(): number {
    return ((this.#steps - this.#askedAt) * TICK_MS) / 60_000;
  }

  /** Makes a step; whether the table is due a tick at this pace. */
  step(pace: number): boolean {
    this.#steps += 1;
    this.#passed += pace;
    if (this.#passed < 1) return false;
    this.#passed -= 1;
    return true;
  }

  /** Somebody asked for something. */
  noteAsked(): void {
    this.#askedAt = this.#steps;
  }
}
