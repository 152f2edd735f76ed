/**
 * Rocking stepped through time.
 *
 * Method: the classical Runge-Kutta rule of order 4 [Kutta1901] with a fixed step. Within a step the body is followed as
 * if the edge it turns about could also pull, which keeps the equation smooth; where the tilt then ends up on the other
 * side, the share of the step at which it is flat is found as a root of the rule itself, so the impact is placed to
 * order 4 as well and no order is lost. The rest of the step is taken about the other edge, impacts and all.
 */
import { assert } from '../assert.ts';
import { findRoot, sin } from '../math/index.ts';
import { ROCKING_REST_SHARE } from '../tolerances.ts';
import type { RockingModel, RockingSide } from './rocking.ts';

interface RockingState {
  /** From flat on the ground; + toward the tip edge [rad]. */
  readonly tilt: number;
  /** [rad/s] */
  readonly rate: number;
}

export interface RockingEvent {
  /** impact: flat again. peak: largest tilt before turning back. */
  readonly kind: 'impact' | 'peak';
  /** Since the start [s]. */
  readonly time: number;
  /** At the event; before the impact, if it is one. */
  readonly state: RockingState;
}

export interface RockingRun {
  readonly outcome: 'at rest' | 'fell toward' | 'fell away' | 'still rocking';
  /** Since the start [s]. */
  readonly time: number;
  readonly state: RockingState;
  readonly events: readonly RockingEvent[];
}

interface RockingSpan {
  /** [s] */
  readonly duration: number;
  /** Fixed step, above 0 [s]. The error falls with its fourth power once frequency × step is below about 0.5. */
  readonly step: number;
  /** Whether the run ends when the body is past an edge and still going. Default true; false while a push lasts. */
  readonly endsOnFall?: boolean;
}

/** Lets the body rock until it rests, is past an edge and still going, or the time is up. */
export function rock(model: RockingModel, start: RockingState, span: RockingSpan): RockingRun {
  const { duration, step, endsOnFall = true } = span;
  assert(step > 0 && duration >= 0 && duration / step < Infinity, 'a step is above 0, a duration 0 or more');
  assert(
    Math.abs(start.tilt) < Math.PI && Number.isFinite(start.rate),
    'the start is a tilt below 180 degrees and a rate',
  );
  const events: RockingEvent[] = [];
  let state = start;
  let time = 0;
  for (let i = 0; ; i++) {
    const outcome = judge(model, state);
    if (outcome === 'at rest' || (outcome !== undefined && endsOnFall)) return { outcome, time, state, events };
    if (time >= duration) return { outcome: 'still rocking', time, state, events };
    const end = Math.min((i + 1) * step, duration);
    state = advance(model, state, time, end, events);
    time = end;
  }
}

/** Energy above flat at rest [J]:  I_P (½ θ'² + p² (cos(α − θ) − cos α)); flat, about the edge that it turns to next. */
export function rockingEnergy(model: RockingModel, state: RockingState): number {
  const side = sideOf(model, state);
  const tilt = Math.abs(state.tilt);
  const climb = 2 * sin(tilt / 2) * sin(side.balance - tilt / 2);
  return side.inertia * ((state.rate * state.rate) / 2 + side.frequency * side.frequency * climb);
}

function judge(model: RockingModel, state: RockingState): RockingRun['outcome'] | undefined {
  const { tilt, rate } = state;
  if (tilt === 0 && rate === 0 && model.toward.balance > 0 && model.away.balance > 0) return 'at rest';
  if (tilt >= model.toward.balance && tilt > 0 && rate > 0) return 'fell toward';
  if (-tilt >= model.away.balance && tilt < 0 && rate < 0) return 'fell away';
  return undefined;
}

/** From one time to another, through however many impacts lie between. */
function advance(
  model: RockingModel,
  start: RockingState,
  from: number,
  to: number,
  events: RockingEvent[],
): RockingState {
  let state = start;
  let time = from;
  for (;;) {
    const side = sideOf(model, state);
    const sign = side === model.toward ? 1 : -1;
    const local = { tilt: sign * state.tilt, rate: sign * state.rate };
    const whole = stepSide(side, local, to - time);
    const share = whole.tilt < 0 ? shareToFlat(side, local, to - time) : 1;
    notePeak({ side, sign, local, time, span: share * (to - time) }, events);
    if (whole.tilt >= 0) return { tilt: sign * whole.tilt, rate: sign * whole.rate };

    // flat: the other edge takes over
    const flat = stepSide(side, local, share * (to - time));
    time += share * (to - time);
    events.push({ kind: 'impact', time, state: { tilt: 0, rate: sign * flat.rate } });
    const next = side === model.toward ? model.away : model.toward;
    const rate = next.carryOver * flat.rate;
    state = rests(next, rate) ? { tilt: 0, rate: 0 } : { tilt: 0, rate: sign * rate };
    if (state.rate === 0) return state;
  }
}

/** Turning about which edge: that of the tilt, or when flat that of the motion. */
function sideOf(model: RockingModel, { tilt, rate }: RockingState): RockingSide {
  if (tilt !== 0) return tilt > 0 ? model.toward : model.away;
  if (rate !== 0) return rate > 0 ? model.toward : model.away;
  return model.toward.balance <= model.away.balance ? model.toward : model.away;
}

/** True when an impact leaves no turn about the next edge, or too little of it to follow; its rate is negative outward. */
function rests(next: RockingSide, rate: number): boolean {
  if (next.carryOver <= 0) return true;
  const smallest = ROCKING_REST_SHARE * next.balance * next.frequency;
  return next.balance > 0 && Math.abs(rate) < smallest;
}

/** One Runge-Kutta step about one edge; tilt and rate are taken as positive away from flat. */
function stepSide(side: RockingSide, { tilt, rate }: RockingState, step: number): RockingState {
  const { balance } = side;
  const square = side.frequency * side.frequency;
  const half = step / 2;
  const a1 = -square * sin(balance - tilt);
  const r2 = rate + half * a1;
  const a2 = -square * sin(balance - (tilt + half * rate));
  const r3 = rate + half * a2;
  const a3 = -square * sin(balance - (tilt + half * r2));
  const r4 = rate + step * a3;
  const a4 = -square * sin(balance - (tilt + step * r3));
  return {
    tilt: tilt + (step / 6) * (rate + 2 * r2 + 2 * r3 + r4),
    rate: rate + (step / 6) * (a1 + 2 * a2 + 2 * a3 + a4),
  };
}

/** Share of a step after which the body is flat, given that a whole step takes it past flat. */
function shareToFlat(side: RockingSide, local: RockingState, step: number): number {
  // from flat, the tilt over the share: its mean rate, whose root is the end of the swing and not its beginning
  const fromFlat = local.tilt === 0;
  const search = findRoot(
    (share) => {
      if (share === 0) return fromFlat ? local.rate * step : local.tilt;
      const { tilt } = stepSide(side, local, share * step);
      return fromFlat ? tilt / share : tilt;
    },
    { low: 0, high: 1 },
  );
  assert(search.kind === 'root', 'a body that ends up past flat was flat in between');
  return search.x;
}

interface Swing {
  readonly side: RockingSide;
  readonly sign: number;
  readonly local: RockingState;
  readonly time: number;
  readonly span: number;
}

/** Notes the largest tilt if the rate changes from outward to inward within the span. */
function notePeak({ side, sign, local, time, span }: Swing, events: RockingEvent[]): void {
  if (local.rate <= 0 || stepSide(side, local, span).rate > 0) return;
  const search = findRoot((share) => stepSide(side, local, share * span).rate, { low: 0, high: 1 });
  assert(search.kind === 'root', 'the rate changes sign in between');
  const { tilt, rate } = stepSide(side, local, search.x * span);
  events.push({ kind: 'peak', time: time + search.x * span, state: { tilt: sign * tilt, rate: sign * rate } });
}
