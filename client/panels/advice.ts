import type { TableView } from '../../engine/index.ts';
import { COACH } from '../text/en.ts';
import { speed } from '../text/numbers.ts';

/** What the coach says, and its key: a new key is a new piece of advice, the same key only new figures. */
export interface Advice {
  readonly key: keyof typeof COACH;
  readonly words: string;
}

/** Descent rate to aim for: that on the ground, and how much faster for each meter of height [m/s], [1/s]. */
const TOUCHDOWN_RATE = 0.8;
const RATE_PER_HEIGHT = 0.09;
const FASTEST_RATE = 5;
/** The rate may be this much more than aimed for before the coach speaks [-], [m/s]. */
const TOO_FAST = 1.15;
const FAST_BY = 0.4;
/** With the engine this far below what holds the speed, it is opened before all else [-]. */
const ENGINE_LOW = 0.5;
const BARELY_SINKING = 0.35;
/** Drift that is worth leaning against, as a share of the tip limit [-]. */
const DRIFT_SHARE = 0.35;
const DRIFT_LEAST = 0.25;
/** Leaning against a drift that will be gone within this time [s]. */
const GONE_WITHIN = 1.6;
/** Lean that matters [rad]. */
const LEANING = 0.03;
const NEARLY_DOWN = 8;
const READY_BELOW = 2;

export function descentRateAim(height: number): number {
  return Math.min(FASTEST_RATE, TOUCHDOWN_RATE + RATE_PER_HEIGHT * Math.max(0, height));
}

/** The one thing to do now. `hoverPercent` is the thrust that holds the present speed; pure. */
export function adviseFlying(view: TableView, hoverPercent: number): Advice {
  const { flight, commanded } = view;
  const rate = -flight.vy;
  const aim = descentRateAim(flight.height);
  if (flight.phase === 'settling' || flight.phase === 'at rest') return { key: 'settle', words: COACH.settle };
  if (flight.touchdown !== undefined) {
    return commanded.thrustPercent > 0
      ? { key: 'contact', words: COACH.contact }
      : { key: 'settle', words: COACH.settle };
  }
  const engineLow = commanded.thrustPercent < ENGINE_LOW * hoverPercent;
  if (rate > TOO_FAST * aim + FAST_BY || (engineLow && rate > 0.7 * aim)) {
    if (commanded.thrustPercent < hoverPercent) return { key: 'fall', words: COACH.fall(Math.round(hoverPercent)) };
    return { key: 'slow', words: COACH.slow(speed(rate, 1), speed(aim, 1)) };
  }
  if (rate < -0.3) return { key: 'climb', words: COACH.climb };
  const drift = adviseDrift(view);
  if (drift !== undefined) return drift;
  if (view.margin.callout !== 'inside' && flight.height < NEARLY_DOWN) return { key: 'outside', words: COACH.outside };
  if (rate < BARELY_SINKING && flight.height > 1) return { key: 'linger', words: COACH.linger };
  if (flight.height < NEARLY_DOWN && Math.abs(flight.angle) > LEANING) return { key: 'upright', words: COACH.upright };
  if (flight.height < READY_BELOW) return { key: 'engineOff', words: COACH.engineOff };
  return { key: 'steady', words: COACH.steady };
}

function adviseDrift(view: TableView): Advice | undefined {
  const { flight, margin } = view;
  const drift = Math.abs(flight.vx);
  // leaning left is counter-clockwise and pushes to the left
  const push = -flight.angle;
  const against = push * flight.vx < 0 && Math.abs(push) > LEANING;
  const braking = (flight.thrust / flight.mass) * Math.abs(Math.sin(flight.angle));
  if (against && braking > 0 && drift / braking < GONE_WITHIN) return { key: 'straighten', words: COACH.straighten };
  if (drift < Math.max(DRIFT_LEAST, DRIFT_SHARE * margin.limit) || against) return undefined;
  const words = speed(drift, 1);
  return flight.vx > 0
    ? { key: 'driftRight', words: COACH.driftRight(words) }
    : { key: 'driftLeft', words: COACH.driftLeft(words) };
}
