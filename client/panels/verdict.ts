import type { JudgedContact, Scorecard } from '../../engine/table/index.ts';
import type { LegState } from '../../engine/world/index.ts';
import { USED_UP } from '../scenes/pose.ts';
import { AFTER, AND_FELL, BUT_STANDS, type FallOnLevel, HEADLINE, outcomeHeadline, WHY } from '../text/en.ts';
import { isLevel } from '../text/ground.ts';
import { degrees, speed } from '../text/numbers.ts';

/** The outcome in one line and the reason in one sentence, in the words of someone who has never landed anything. */
export interface Verdict {
  readonly headline: string;
  readonly why: string;
}

/** Cosine of the lean beyond which a lander at rest lies rather than stands. */
const LYING = 0.5;
/** Lean at contact that is worth naming as a reason [rad]. */
const LEANING = 0.087;

/** `attitude`: of the lander at rest, from upright [rad]. */
export function hasFallen(attitude: number): boolean {
  return Math.cos(attitude) < LYING;
}

export function gaveWay({ strokeUsed }: Pick<LegState, 'strokeUsed'>): boolean {
  return strokeUsed >= USED_UP;
}

/** The contact that decided; undefined when it never met the ground. */
export function worstContact({ contacts, worst }: Scorecard): JudgedContact | undefined {
  return worst === undefined ? contacts[0] : contacts[worst];
}

export function verdictOf(card: Scorecard, attitude: number): Verdict {
  return { headline: headlineOf(card, attitude), why: whyOf(card) };
}

function headlineOf(card: Scorecard, attitude: number): string {
  const { outcome, contacts } = card;
  const worst = worstContact(card);
  if (outcome === 'gear overload')
    return hasFallen(attitude) ? `${HEADLINE.gaveWay}, ${AND_FELL}` : `${HEADLINE.gaveWay}, ${BUT_STANDS}`;
  if (outcome === 'upright inside limit' || outcome === 'upright outside limit') {
    const isThin = worst?.band === 'thin';
    const words = outcome === 'upright outside limit' ? HEADLINE.luck : isThin ? HEADLINE.thin : HEADLINE.upright;
    const again = contacts.find(({ cause }) => cause === 're-light') ?? contacts.find(({ cause }) => cause === 'hop');
    return again === undefined || again.cause === 'arrival' ? words : `${words}, ${AFTER[again.cause]}`;
  }
  const words = outcomeHeadline(outcome, fallOnLevel(card, worst));
  if (outcome === 'propellant exhausted' && worst !== undefined && !hasFallen(attitude))
    return `${words}, ${BUT_STANDS}`;
  const isToldAlready = outcome.startsWith('tipped') || !hasFallen(attitude);
  return isToldAlready ? words : `${words}, ${AND_FELL}`;
}

/** Slower than this at contact, there is no way that it was moving [m/s]. */
const STILL = 0.05;

/** How the side that the outcome names lies to the travel, for ground that is called level; undefined on a slope. */
function fallOnLevel({ outcome }: Scorecard, contact: JudgedContact | undefined): FallOnLevel | undefined {
  if (contact === undefined || !isLevel(contact.arrival.slope)) return undefined;
  const { slope, vx } = contact.arrival;
  if (Math.abs(vx) < STILL) return 'still';
  // the outcome goes by the least slope, and where there is none by the travel
  const travelsDownhill = slope === 0 || vx * slope < 0;
  return travelsDownhill === (outcome === 'tipped downhill') ? 'along' : 'against';
}

function whyOf(card: Scorecard): string {
  const worst = worstContact(card);
  switch (card.outcome) {
    case 'upright inside limit':
    case 'upright outside limit':
      return worst === undefined ? WHY.stopped : whyUpright(card, worst);
    case 'tipped downhill':
    case 'tipped uphill':
      return worst === undefined ? WHY.stopped : whyTipped(card, worst);
    case 'gear overload':
      return worst === undefined ? WHY.stopped : whyOverloaded(worst);
    case 'off site':
      return worst === undefined ? WHY.offSite : WHY.offSiteAfter;
    case 'propellant exhausted':
      return worst === undefined ? WHY.exhaustedAloft : WHY.exhausted(...fall(worst));
    case 'aborted':
      return WHY.aborted;
    case 'stopped':
      return WHY.stopped;
  }
  return card.outcome satisfies never;
}

function whyUpright({ contacts, worst: index = 0 }: Scorecard, worst: JudgedContact): string {
  const arrived = speed(Math.abs(worst.arrival.vx));
  const { limit, arrival } = worst;
  const tip = limit?.tip;
  if (limit === undefined) return WHY.noLimit(...fall(worst));
  const isOutside = worst.band === 'outside';
  if (isOutside && (tip ?? 0) <= 0) return WHY.luckAtAnySpeed(leanOf(worst));
  if (isOutside) return WHY.luck(arrived, speed(tip ?? limit.upTo));
  if (index > 0)
    return WHY.worstLater(
      index + 1,
      contacts[index]?.cause === 're-light' ? 're-light' : 'hop',
      speed(arrival.descentRate, 1),
      arrived,
    );
  if (contacts.length > 1)
    return WHY.firstWorst(contacts[1]?.cause === 're-light' ? 're-light' : 'hop', arrived, limitWords(worst));
  if (tip === undefined) return WHY.never(arrived, speed(limit.upTo, 1));
  return worst.band === 'thin' ? WHY.thin(arrived, speed(tip)) : WHY.inside(arrived, speed(tip));
}

function whyTipped({ contacts, worst: index = 0 }: Scorecard, worst: JudgedContact): string {
  const { limit, arrival } = worst;
  const arrived = speed(Math.abs(arrival.vx));
  if (limit === undefined) return WHY.noLimit(...fall(worst));
  const where = isLevel(arrival.slope) ? 'level' : 'slope';
  const count = contacts.length > 1 ? index + 1 : undefined;
  if (limit.tip === 0) return WHY.tipsAtAnySpeed(leanOf(worst));
  if (worst.band === 'outside' && limit.tip !== undefined) return WHY.tipped(arrived, speed(limit.tip), where, count);
  return WHY.tippedAnyway(arrived, limitWords(worst));
}

function whyOverloaded(worst: JudgedContact): string {
  const { limit, arrival } = worst;
  const [down, across] = fall(worst);
  if (limit?.gear !== undefined && limit.gear > 0 && limit.gear <= Math.abs(arrival.vx))
    return WHY.overloadByDrift(down, across, speed(limit.gear));
  return WHY.overload(down);
}

function limitWords({ limit }: JudgedContact): string {
  if (limit === undefined) return '';
  return limit.tip === undefined ? WHY.notUpTo(speed(limit.upTo, 1)) : WHY.tipsFrom(speed(limit.tip));
}

function leanOf({ arrival }: JudgedContact): string | undefined {
  return Math.abs(arrival.angle) < LEANING ? undefined : degrees(Math.abs(arrival.angle), 0);
}

/** Down and sideways. */
function fall({ arrival }: JudgedContact): readonly [string, string] {
  return [speed(arrival.descentRate, 1), speed(Math.abs(arrival.vx), 1)];
}
