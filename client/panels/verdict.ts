import type { Scorecard } from '../../engine/index.ts';
import { outcomeHeadline, WHY } from '../text/en.ts';
import { speed } from '../text/numbers.ts';

/** The outcome in one line and the reason in one sentence, in the words of someone who has never landed anything. */
export interface Verdict {
  readonly headline: string;
  readonly why: string;
}

/** Utilisation up to which a landing needs no advice [-]: the end of the desired band. */
const EASY = 0.6;

export function verdictOf(card: Scorecard): Verdict {
  const spare = card.speedMargin;
  return {
    headline: outcomeHeadline(card.outcome, spare !== undefined && spare >= 0 ? speed(spare) : undefined),
    why: whyOf(card),
  };
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
