import type { Scorecard } from '../../engine/table/index.ts';
import { AND_FELL, type FallOnLevel, outcomeHeadline, WHY } from '../text/en.ts';
import { isLevel } from '../text/ground.ts';
import { speed } from '../text/numbers.ts';

/** The outcome in one line and the reason in one sentence, in the words of someone who has never landed anything. */
export interface Verdict {
  readonly headline: string;
  readonly why: string;
}

/** Utilisation up to which a landing needs no advice [-]: the end of the desired band. */
const EASY = 0.6;

/** Cosine of the lean beyond which a lander at rest lies rather than stands. */
const LYING = 0.5;

/** `attitude`: of the lander at rest, from upright [rad]. */
export function hasFallen(attitude: number): boolean {
  return Math.cos(attitude) < LYING;
}

export function verdictOf(card: Scorecard, attitude: number): Verdict {
  return {
    headline: headlineOf(card, attitude),
    why: whyOf(card),
  };
}

function headlineOf(card: Scorecard, attitude: number): string {
  const { outcome, speedMargin } = card;
  const spare = speedMargin !== undefined && speedMargin >= 0 ? speed(speedMargin) : undefined;
  const words = outcomeHeadline(outcome, { spare, onLevel: fallOnLevel(card) });
  const isToldAlready = outcome.startsWith('tipped') || !hasFallen(attitude);
  return isToldAlready ? words : `${words}, ${AND_FELL}`;
}

/** Slower than this at contact, there is no way that it was moving [m/s]. */
const STILL = 0.05;

/** How the side that the outcome names lies to the travel, for ground that is called level; undefined on a slope. */
function fallOnLevel({ outcome, touchdown }: Scorecard): FallOnLevel | undefined {
  if (touchdown === undefined || !isLevel(touchdown.slope)) return undefined;
  const { slope, vx } = touchdown;
  if (Math.abs(vx) < STILL) return 'still';
  // the outcome goes by the least slope, and where there is none by the travel
  const travelsDownhill = slope === 0 || vx * slope < 0;
  return travelsDownhill === (outcome === 'tipped downhill') ? 'along' : 'against';
}

function whyOf(card: Scorecard): string {
  const { touchdown, limit } = card;
  const arrived = touchdown === undefined ? '' : speed(Math.abs(touchdown.vx));
  const tripping = limit === undefined ? undefined : speed(limit.plastic);
  switch (card.outcome) {
    case 'upright inside limit':
      if (tripping === undefined) return WHY.level;
      return (card.utilisation ?? 1) <= EASY
        ? WHY.farInside(arrived, tripping)
        : WHY.inside(arrived, tripping, speed(card.speedMargin ?? 0));
    case 'upright outside limit':
      return tripping === undefined ? WHY.cannotStand : WHY.luck(arrived, tripping);
    case 'tipped downhill':
    case 'tipped uphill':
      if (tripping === undefined || (limit?.plastic ?? 0) <= 0) return WHY.cannotStand;
      return (card.utilisation ?? 2) > 1 ? WHY.tipped(arrived, tripping) : WHY.tippedAnyway(arrived, tripping);
    case 'gear overload':
      return touchdown === undefined ? WHY.stopped : WHY.overload(speed(touchdown.descentRate));
    case 'off site':
      return WHY.offSite;
    case 'propellant exhausted':
      return WHY.exhausted;
    case 'aborted':
      return WHY.aborted;
    case 'stopped':
      return WHY.stopped;
  }
  return card.outcome satisfies never;
}
