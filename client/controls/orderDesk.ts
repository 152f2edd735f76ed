import type { Orders } from '../../engine/descent/index.ts';
import {
  DESCENT_RATE_RANGE_TENTHS,
  DRIFT_RANGE_TENTHS,
  TILT_RANGE_DEG,
  type Command,
} from '../../engine/table/index.ts';
import type { TableLink } from '../net/index.ts';
import { Wishes, type Values } from './wishes.ts';

/** Tenths of a meter a second that one press changes, up to a speed [dm/s], and beyond it; whole degrees. */
const FINE = 2;
const FINE_UP_TO = 20;
const COARSE = 5;
const LEAN_STEP = 2;

interface Range {
  readonly least: number;
  readonly most: number;
}

/** Numbers of an order; `across` is 1 where a lean is held. */
type Ordered = 'descentRate' | 'drift' | 'lean' | 'across';

/** What this member orders in a descent by orders: like `CommandDesk`, it answers a press at once. */
export class OrderDesk {
  readonly #link: TableLink;
  readonly #onRefusal: (reason: string) => void;
  readonly #wishes = new Wishes<Ordered>();

  constructor(link: TableLink, onRefusal: (reason: string) => void) {
    this.#link = link;
    this.#onRefusal = onRefusal;
  }

  /** What is ordered, as far as this member knows; undefined in a descent by hand. */
  get orders(): Orders | undefined {
    const seen = this.#link.view?.orders;
    if (seen === undefined) return undefined;
    const holdsLean = this.#wishes.shown('across', seen.across === 'lean' ? 1 : 0) === 1;
    return {
      descentRateTenths: this.#wishes.shown('descentRate', seen.descentRateTenths),
      across: holdsLean ? 'lean' : 'drift',
      driftTenths: this.#wishes.shown('drift', seen.driftTenths),
      leanDeg: this.#wishes.shown('lean', seen.leanDeg),
    };
  }

  descentRateTo(tenths: number): void {
    const wanted = within(DESCENT_RATE_RANGE_TENTHS, tenths);
    this.#give([['descentRate', wanted]], { kind: 'orderDescentRate', tenths: wanted });
  }

  /** One step, to the next round figure: 1 is faster down. */
  descentRateStep(direction: 1 | -1): void {
    const { orders } = this;
    if (orders !== undefined) this.descentRateTo(nextRound(orders.descentRateTenths, direction));
  }

  driftTo(tenths: number): void {
    const wanted = within(DRIFT_RANGE_TENTHS, tenths);
    this.#give(
      [
        ['drift', wanted],
        ['across', 0],
      ],
      { kind: 'orderDrift', tenths: wanted },
    );
  }

  /** Counter-clockwise positive, as the engine has it: leaning left is positive. */
  leanTo(degrees: number): void {
    const wanted = within(TILT_RANGE_DEG, degrees);
    this.#give(
      [
        ['lean', wanted],
        ['across', 1],
      ],
      { kind: 'orderLean', degrees: wanted },
    );
  }

  /** One step of whichever of the two is held across the ground. */
  acrossStep(direction: 'left' | 'right'): void {
    const { orders } = this;
    const way = direction === 'right' ? 1 : -1;
    if (orders?.across === 'drift') this.driftTo(nextRound(orders.driftTenths, way));
    if (orders?.across === 'lean') this.leanTo(orders.leanDeg - way * LEAN_STEP);
  }

  /** No drift, or upright. */
  acrossNone(): void {
    if (this.orders?.across === 'lean') this.leanTo(0);
    else this.driftTo(0);
  }

  /** Holds the drift, or the lean, that there is at this moment. */
  hold(across: Orders['across']): void {
    const flight = this.#link.view?.flight;
    if (flight === undefined || this.orders?.across === across) return;
    if (across === 'drift') this.driftTo(10 * flight.vx);
    else this.leanTo((180 * flight.angle) / Math.PI);
  }

  switchAcross(): void {
    this.hold(this.orders?.across === 'lean' ? 'drift' : 'lean');
  }

  #give(values: Values<Ordered>, command: Command): void {
    const view = this.#link.view;
    if (view?.stage !== 'descending' || !view.you.holds.tilt || this.#wishes.has(values)) return;
    const answer = this.#link.command(command);
    this.#wishes.ask(values, answer);
    void answer.then((given) => {
      if (!given.ok) this.#onRefusal(given.error.reason);
    });
  }
}

function within({ least, most }: Range, value: number): number {
  return Math.round(Math.min(most, Math.max(least, value))) + 0;
}

/** The next round figure that way: fifths of a meter a second up to two of them, halves beyond. */
function nextRound(tenths: number, way: 1 | -1): number {
  const isFine = way > 0 ? tenths >= -FINE_UP_TO && tenths < FINE_UP_TO : tenths > -FINE_UP_TO && tenths <= FINE_UP_TO;
  const size = isFine ? FINE : COARSE;
  return (way > 0 ? Math.floor(tenths / size) + 1 : Math.ceil(tenths / size) - 1) * size;
}
