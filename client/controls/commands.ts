import { THRUST_RANGE, TILT_RANGE_DEG, type Command } from '../../engine/table/index.ts';
import type { ControlInput } from '../../engine/world/index.ts';
import type { TableLink } from '../net/index.ts';
import { OrderDesk } from './orderDesk.ts';
import { Wishes } from './wishes.ts';

/** Whole percent of thrust and whole degrees of tilt that one press changes. */
const THRUST_STEP = 5;
const TILT_STEP = 2;

type Control = 'thrust' | 'tilt';

/**
 * What this member wants the lander to do. Answers a press at once, sends it, and falls back to what the table says once
 * the table shows the same, refuses, or stays silent about it.
 */
export class CommandDesk {
  readonly #link: TableLink;
  readonly #onRefusal: (reason: string) => void;
  readonly #wishes = new Wishes<Control>();
  /** What is said instead in a descent by orders. */
  readonly orders: OrderDesk;

  constructor(link: TableLink, onRefusal: (reason: string) => void) {
    this.#link = link;
    this.#onRefusal = onRefusal;
    this.orders = new OrderDesk(link, onRefusal);
  }

  get commanded(): ControlInput {
    const seen = this.#link.view?.commanded ?? { thrustPercent: 0, tiltDeg: 0 };
    return {
      thrustPercent: this.#wishes.shown('thrust', seen.thrustPercent),
      tiltDeg: this.#wishes.shown('tilt', seen.tiltDeg),
    };
  }

  thrustTo(percent: number): void {
    const wanted = Math.round(Math.min(THRUST_RANGE.most, Math.max(THRUST_RANGE.least, percent)));
    this.#give('thrust', wanted, { kind: 'setThrust', percent: wanted });
  }

  /** One step up or down, to the next round figure. */
  thrustStep(direction: 1 | -1): void {
    const steps = this.commanded.thrustPercent / THRUST_STEP;
    this.thrustTo((direction > 0 ? Math.floor(steps) + 1 : Math.ceil(steps) - 1) * THRUST_STEP);
  }

  /** Counter-clockwise positive, as the engine has it: leaning left is positive. */
  tiltTo(degrees: number): void {
    const wanted = Math.round(Math.min(TILT_RANGE_DEG.most, Math.max(TILT_RANGE_DEG.least, degrees)));
    this.#give('tilt', wanted, { kind: 'setTilt', degrees: wanted });
  }

  lean(direction: 'left' | 'right'): void {
    this.tiltTo(this.commanded.tiltDeg + (direction === 'left' ? TILT_STEP : -TILT_STEP));
  }

  get isByOrders(): boolean {
    return this.#link.view?.orders !== undefined;
  }

  toggleHold(): void {
    if (this.#link.view?.held === true) this.goOn();
    else this.pause();
  }

  /** Begins a descent, or goes on with one that is on hold; nothing where one runs. */
  goOn(): void {
    const view = this.#link.view;
    if (view?.stage === 'gathering') this.ask({ kind: 'begin' });
    else if (view?.held === true) this.ask({ kind: 'resume' });
  }

  /** Reads back the oldest callout that waits for this seat; else confirms the oldest of its own that was read back. */
  answerLoop(): void {
    const view = this.#link.view;
    const seat = view?.you.seat;
    if (view === undefined || seat === undefined) return;
    const heard = view.talk.calls.find(({ waitsFor }) => waitsFor.includes(seat));
    const own = view.talk.calls.find((call) => call.from === seat && call.waitsFor.length === 0 && !call.isConfirmed);
    if (heard !== undefined) this.ask({ kind: 'readBack', callout: heard.id });
    else if (own !== undefined) this.ask({ kind: 'confirm', callout: own.id });
  }

  /** Puts the descent on hold; nothing where it is. */
  pause(): void {
    const view = this.#link.view;
    if (view?.stage === 'descending' && !view.held) this.ask({ kind: 'hold' });
  }

  ask(command: Command): void {
    void this.#link.command(command).then((answer) => {
      if (!answer.ok) this.#onRefusal(answer.error.reason);
    });
  }

  #give(control: Control, value: number, command: Command): void {
    const view = this.#link.view;
    if (view?.stage !== 'descending' || !view.you.holds[control] || this.#wishes.has([[control, value]])) return;
    const answer = this.#link.command(command);
    this.#wishes.ask([[control, value]], answer);
    void answer.then((given) => {
      if (!given.ok) this.#onRefusal(given.error.reason);
    });
  }
}
