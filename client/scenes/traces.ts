import { TICK_RATE, type DescentState } from '../../engine/world/index.ts';
import type { Puff } from '../views/dust.ts';
import type { Ghost } from '../views/ghosts.ts';
import type { Figure } from '../views/lander/figure.ts';
import type { Print } from '../views/prints.ts';
import { ramp } from '../views/sheet.ts';
import type { TrailPoint } from '../views/trail.ts';
import { footSpots, poseOf } from './pose.ts';

/** One point of the path flown every so many ticks in flight, and from the first contact on. */
const TRAIL_TICKS = { flight: 12, ground: 3 };
/** The engine raises dust so many times a second, below this height [m]; no grain is longer in the air [s]. */
const PUFFS = 15;
const LIFTS_BELOW = 16;
const LONGEST = 4;
/** Grains at the most: of one such moment, and of a pad that meets the ground. */
const GRAINS = { engine: 6, pad: 26 };
/** A pad that meets the ground so fast throws up all that it can [m/s]. */
const HARD = 3;
/** From one outline of a lander that falls to the next, from how it touched down on [rad], and how many there are at most. */
const GHOST_EVERY = (30 * Math.PI) / 180;
const MOST_GHOSTS = 8;
/** A pad so near to a print stands in it, and makes it longer [m]. */
const SLID = 0.4;

/** What a descent leaves on the sheet: its path, dust in flight, prints of pads, and the arc of a fall. */
export class Traces {
  trail: TrailPoint[] = [];
  puffs: Puff[] = [];
  prints: Print[] = [];
  ghosts: Ghost[] = [];
  #tick = -Infinity;

  /** Takes the next moment; an earlier one begins anew. */
  take(state: DescentState, figure: Figure, maxThrust: number): void {
    if (state.tick < this.#tick) this.forget();
    this.#follow(state);
    this.#raise(state, state.thrust / maxThrust);
    if (state.touchdown !== undefined) this.#press(state, state.touchdown.descentRate);
    if (state.touchdown !== undefined) this.#fall(state, state.touchdown.angle, figure);
    this.#tick = state.tick;
  }

  /** The truth, once it comes to lie over what was believed: its pads have prints, the believed path stays. */
  stand(state: DescentState): void {
    this.prints = [];
    this.#press(state, 0);
    this.ghosts = [];
    this.puffs = [];
  }

  forget(): void {
    this.trail = [];
    this.puffs = [];
    this.ghosts = [];
    this.prints = [];
    this.#tick = -Infinity;
  }

  #follow({ tick, x, y, touchdown }: DescentState): void {
    const last = this.trail.at(-1);
    const apart = touchdown === undefined ? TRAIL_TICKS.flight : TRAIL_TICKS.ground;
    if (last !== undefined && tick - last.seconds * TICK_RATE < apart) return;
    this.trail.push({ x, y, seconds: tick / TICK_RATE });
  }

  /** At even moments of the descent, so that one that is played again looks as it did. */
  #raise({ tick, x, height, touchdown }: DescentState, throttle: number): void {
    const now = tick / TICK_RATE;
    this.puffs = this.puffs.filter((puff) => now - puff.seconds < LONGEST);
    const moment = Math.floor(now * PUFFS);
    if (moment === Math.floor((this.#tick / TICK_RATE) * PUFFS) || touchdown !== undefined) return;
    const strength = ramp(height, LIFTS_BELOW, 1) * ramp(throttle, 0.04, 0.35);
    if (strength <= 0) return;
    const grains = Math.max(1, Math.round(GRAINS.engine * strength));
    this.puffs.push({ seconds: moment / PUFFS, x, half: 1.6, strength, grains });
  }

  #press(state: DescentState, descentRate: number): void {
    for (const { footX, inContact } of state.legs) {
      if (!inContact) continue;
      const trodden = this.prints.findIndex((print) => footX > print.from - SLID && footX < print.to + SLID);
      const print = this.prints[trodden];
      if (print !== undefined) {
        this.prints[trodden] = { from: Math.min(print.from, footX), to: Math.max(print.to, footX) };
        continue;
      }
      this.prints.push({ from: footX, to: footX });
      const strength = ramp(descentRate, 0, HARD);
      const grains = Math.round(GRAINS.pad * (0.35 + 0.65 * strength));
      this.puffs.push({ seconds: state.tick / TICK_RATE, x: footX, half: 0.3, strength: 0.6 * strength, grains });
    }
  }

  #fall(state: DescentState, from: number, figure: Figure): void {
    const due = Math.min(MOST_GHOSTS, Math.floor(Math.abs(state.angle - from) / GHOST_EVERY));
    if (this.ghosts.length >= due) return;
    const { x, y, angle } = state;
    const [left, right] = footSpots(poseOf(state, figure));
    this.ghosts.push({ x, y, angle, feet: [left, right] });
  }
}
