import { askedRate } from '../../engine/descent/index.ts';
import type { HeldControls, TableView } from '../../engine/table/index.ts';
import type { Phase } from '../../engine/world/index.ts';
import { COACH, SOURCE_NAMES } from '../text/en.ts';
import { speed } from '../text/numbers.ts';
import { isDry } from './alerts.ts';
import { gaveWay } from '../scenes/pose.ts';
import { hasFallen } from './verdict.ts';

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
const CLIMBING = 0.3;
const BARELY_SINKING = 0.35;
/** Drift that is worth leaning against, as a share of the tip limit and at least [-], [m/s]. */
const DRIFT_SHARE = 0.35;
const DRIFT_LEAST = 0.25;
/** Leaning against a drift that will be gone within this time [s]. */
const GONE_WITHIN = 1.6;
/** Lean that matters [rad]. */
const LEANING = 0.03;
/** Heights of the lowest foot [m]. */
const NEARLY_DOWN = 8;
const READY_BELOW = 2;
const TOUCHING = 0.5;
/** All that the engine has [%]. */
const FULL = 100;

const OWN_AIM = { touchdownRate: TOUCHDOWN_RATE, ratePerHeight: RATE_PER_HEIGHT, fastestRate: FASTEST_RATE };

/** Descent rate to aim for [m/s]: as the brief of the drill says, else as the coach has it. */
export function descentRateAim(height: number, drill: TableView['drill']): number {
  return askedRate({ ...OWN_AIM, ...(drill && { profile: drill.profile }) }, Math.max(0, height));
}

/** The one thing to do now, for someone who holds these controls. `hoverPercent` is the thrust that holds the speed. */
export function adviseFlying(view: TableView, hoverPercent: number, holds: HeldControls): Advice {
  // after a hop it flies again, and wants what any flight wants
  const grounded = adviseGrounded(view, holds);
  if (grounded !== undefined) return grounded;
  if (isDry(view)) return { key: 'dry', words: COACH.dry };
  if (view.engine.cutOff === 'fired') return { key: 'cutOff', words: COACH.cutOff };
  const thrust = holds.thrust ? adviseThrust(view, hoverPercent) : undefined;
  // leaning so far, all the thrust there is does not hold it up
  if (hoverPercent > FULL)
    return holds.tilt ? { key: 'leaning', words: COACH.leaning } : { key: 'watchLean', words: COACH.watchLean };
  const tilt = holds.tilt ? adviseTilt(view) : undefined;
  if (thrust?.isPressing === true) return thrust.advice;
  const advice = tilt ?? thrust?.advice;
  if (advice !== undefined) return advice;
  const { predicted } = view.margin;
  if (predicted === undefined) return { key: 'steady', words: COACH.steadyHigh };
  return predicted.callout === 'outside'
    ? { key: 'outside', words: COACH.outside }
    : { key: 'steady', words: COACH.steady };
}

/** For whoever judges the sources: where to look, and that a word is wanted. */
export function adviseSensors({ sources = [], drill }: TableView): Advice {
  const believed = sources.filter(({ source, judgment }) => MEASURING.includes(source) && judgment === 'accepted');
  if (believed.length === 0) return { key: 'blind', words: COACH.blind };
  const wrong = sources.find(({ state, judgment }) => WRONG.includes(state) && judgment !== 'rejected');
  // in a drill it is for the crew to see
  if (wrong !== undefined && drill === undefined)
    return { key: 'sourceWrong', words: COACH.sourceWrong(SOURCE_NAMES[wrong.source]) };
  return { key: 'sources', words: COACH.sources };
}

/** What height and speed come from, besides dead reckoning. */
const MEASURING: readonly string[] = ['altimeter', 'velocityRadar'];

/** What the automatic check says of a source that is not to be believed; one that cannot measure so near the ground is no fault. */
const WRONG: readonly string[] = ['suspect', 'stale', 'failed'];

/** Phases in which the gear is on the ground. */
const GROUNDED: readonly Phase[] = ['contact', 'settling', 'at rest'];

/** What there is to do on the ground; nothing in flight. */
export function adviseGrounded({ commanded, flight }: TableView, holds: HeldControls): Advice | undefined {
  if (!GROUNDED.includes(flight.phase)) return undefined;
  if (hasFallen(flight.angle)) return { key: 'fallen', words: COACH.fallen };
  if (flight.legs.some(gaveWay)) return { key: 'gaveWay', words: gaveWayWords(flight) };
  if (holds.thrust && flight.phase === 'contact' && commanded.thrustPercent > 0)
    return { key: 'contact', words: COACH.contact };
  return { key: 'settle', words: COACH.settle };
}

/** For whoever holds no controls, while a lander settles: a tall one may rock from leg to leg for most of a minute. */
export function adviseWaiting(view: TableView): Advice | undefined {
  if (view.flight.phase !== 'settling') return undefined;
  const grounded = adviseGrounded(view, { thrust: false, tilt: false });
  if (grounded?.key !== 'settle') return grounded;
  return { key: 'watchSettle', words: COACH.watchSettle(view.drawnIn === 'pencil') };
}

/** Told as soon as it happens: a crash may go on tumbling for long before it rests. */
function gaveWayWords({ touchdown }: TableView['flight']): string {
  return COACH.gaveWay(speed(touchdown?.descentRate ?? 0, 1));
}

/** Pressing: comes before anything about the tilt. */
function adviseThrust(
  { flight, commanded, margin, drill }: TableView,
  hoverPercent: number,
): { readonly advice: Advice; readonly isPressing: boolean } | undefined {
  const rate = -flight.vy;
  const aim = descentRateAim(flight.height, drill);
  const say = (advice: Advice, isPressing: boolean) => ({ advice, isPressing });
  if (flight.height < TOUCHING) return say({ key: 'engineOff', words: COACH.engineOff }, true);
  const isLow = commanded.thrustPercent < hoverPercent;
  if (
    (commanded.thrustPercent < ENGINE_LOW * hoverPercent && rate > 0.7 * aim) ||
    (isLow && rate > TOO_FAST * aim + FAST_BY)
  ) {
    return say({ key: 'fall', words: COACH.fall(Math.round(hoverPercent)) }, true);
  }
  if (rate > TOO_FAST * aim + FAST_BY)
    return say({ key: 'slow', words: COACH.slow(speed(rate, 1), speed(aim, 1)) }, true);
  if (rate < -CLIMBING) return say({ key: 'climb', words: COACH.climb }, true);
  if ((margin.predicted?.callout ?? 'inside') !== 'inside' && flight.height < NEARLY_DOWN)
    return say({ key: 'outside', words: COACH.outside }, false);
  if (rate < BARELY_SINKING) return say({ key: 'linger', words: COACH.linger }, false);
  if (flight.height < READY_BELOW) return say({ key: 'engineOff', words: COACH.engineOff }, false);
  return undefined;
}

function adviseTilt({ flight, margin }: TableView): Advice | undefined {
  const drift = Math.abs(flight.vx);
  // leaning left is counter-clockwise and pushes to the left
  const push = -flight.angle;
  const against = push * flight.vx < 0 && Math.abs(push) > LEANING;
  const braking = (flight.thrust / flight.mass) * Math.abs(Math.sin(flight.angle));
  const goneAfter = braking > 0 ? drift / braking : Infinity;
  if (against && goneAfter < GONE_WITHIN) return { key: 'straighten', words: COACH.straighten };
  const timeLeft = flight.height / Math.max(BARELY_SINKING, -flight.vy);
  const isCared = against && goneAfter < timeLeft;
  if (drift >= Math.max(DRIFT_LEAST, DRIFT_SHARE * (margin.predicted?.limit ?? 0)) && !isCared) {
    const words = speed(drift, 1);
    return flight.vx > 0
      ? { key: 'driftRight', words: COACH.driftRight(words) }
      : { key: 'driftLeft', words: COACH.driftLeft(words) };
  }
  if (flight.height < NEARLY_DOWN && Math.abs(flight.angle) > LEANING) return { key: 'upright', words: COACH.upright };
  return undefined;
}
