import { THRUST_RANGE, TILT_RANGE_DEG, type Command } from '../../engine/table/index.ts';
import type { ControlInput } from '../../engine/world/index.ts';
import type { TableLink } from '../net/index.ts';

/** Whole percent of thrust and whole degrees of tilt that one press changes. */
const THRUST_STEP = 5;
const TILT_STEP = 2;

/** How long an accepted command is shown before the table's own word is believed again [ms]. */
const BELIEVE_AFTER_MS = 500;

type Control = 'thrust' | 'tilt';

/** A command that was given and not yet seen in a view. */
interface Wish {
  readonly value: number;
  /** Infinity until the table has answered. */
  until: number;
}

/**
 * What this member wants the lander to do. Answers a press at once, sends it, and falls back to what the table says once
 * the table shows the same, refuses, or stays silent about it.
 */
export class CommandDesk {
  readonly #link: TableLink;
  readonly #onRefusal: (reason: string) => void;
  readonly #wishes: Partial<Record<Control, Wish>> = {};

  constructor(link: TableLink, onRefusal: (reason: string) => void) {
    this.#link = link;
    this.#onRefusal = onRefusal;
  }

  get commanded(): ControlInput {
    const seen = this.#link.view?.commanded ?? { thrustPercent: 0, tiltDeg: 0 };
    return {
      thrustPercent: this.#shown('thrust', seen.thrustPercent),
      tiltDeg: this.#shown('tilt', seen.tiltDeg),
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

  #shown(control: Control, seen: number): number {
    const wish = this.#wishes[control];
    if (wish === undefined) return seen;
    if (wish.until !== Infinity && (wish.value === seen || performance.now() > wish.until)) {
      delete this.#wishes[control];
      return seen;
    }
    return wish.value;
  }

  #give(control: Control, value: number, command: Command): void {
    const view = this.#link.view;
    if (view?.stage !== 'descending' || !view.you.holds[control]) return;
    if (this.#wishes[control]?.value === value) return;
    const wish: Wish = { value, until: Infinity };
    this.#wishes[control] = wish;
    void this.#link.command(command).then((answer) => {
      wish.until = answer.ok ? performance.now() + BELIEVE_AFTER_MS : 0;
      if (!answer.ok) this.#onRefusal(answer.error.reason);
    });
  }
}
