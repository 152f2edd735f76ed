import type { JudgedContact, JudgedDescent } from '../../engine/table/index.ts';
import type { DescentState } from '../../engine/world/index.ts';
import { gaveWay } from '../scenes/pose.ts';
import {
  AFTER,
  AND_FELL,
  BUT_STANDS,
  type FallOnLevel,
  HEADLINE,
  ON_IMPACT,
  outcomeHeadline,
  WHY,
} from '../text/en.ts';
import { isLevel } from '../text/ground.ts';
import { degrees, distance, speed } from '../text/numbers.ts';

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

/** A lander that comes down again slower than this is settling, a hand's breadth off the ground on the Moon [m/s]. */
const SETTLING = 0.5;

/** The contact that decided how it ended, and which one it was. */
export interface Deciding {
  readonly contact: JudgedContact;
  readonly index: number;
}

/** Contacts that are worth a word: the first, those in which it came down anew, and those nearer to tipping than desired. */
export function namedContacts({ contacts }: JudgedDescent): readonly Deciding[] {
  return contacts
    .map((contact, index) => ({ contact, index }))
    .filter(
      ({ contact, index }) => index === 0 || contact.arrival.descentRate >= SETTLING || contact.band !== 'desired',
    );
}

/** Of a fall the first contact outside its limit, of a crash the hardest, else the closest to tipping; undefined when it never met the ground. */
export function decidingContact(card: JudgedDescent): Deciding | undefined {
  const named = namedContacts(card);
  const outside = named.find(({ contact }) => contact.band === 'outside');
  if (card.outcome.startsWith('tipped') && outside !== undefined) return outside;
  const isCrash = card.outcome === 'gear overload' || card.outcome === 'propellant exhausted';
  const weight = ({ contact }: Deciding) => (isCrash ? contact.arrival.descentRate : shareOfLimit(contact));
  return named.toSorted((a, b) => weight(b) - weight(a))[0];
}

/** Of the speed from which it tips, or of the largest that was looked at. */
function shareOfLimit({ arrival, limit }: JudgedContact): number {
  const reach = limit?.tip ?? limit?.upTo ?? 0;
  return reach > 0 ? Math.abs(arrival.vx) / reach : Infinity;
}

/** Whether it met the ground anew in a way that is worth a word: under thrust, or by a hop. */
function metAgain(card: JudgedDescent): 'hop' | 're-light' | undefined {
  const causes = new Set(namedContacts(card).map(({ contact }) => contact.arrival.after));
  return (['re-light', 'hop'] as const).find((cause) => causes.has(cause));
}

/** What of a lander's last motion its verdict goes by. */
export type LastMotion = Pick<DescentState, 'angle' | 'vx' | 'vy'>;

export function verdictOf(card: JudgedDescent, last: LastMotion & Pick<DescentState, 'height'>): Verdict {
  return { headline: headlineOf(card, last), why: whyOf(card, last) };
}

/** A crash is called before everything rests: until then nobody can say how it will lie [m/s]. */
const MOVING = 0.2;

export function isMoving({ vx, vy }: LastMotion): boolean {
  return Math.hypot(vx, vy) > MOVING;
}

/** Its legs were used up by the fall alone, however it went on: what comes after says nothing of tipping. */
export function isCrash(card: JudgedDescent): boolean {
  const { outcome, strokeUsed } = card;
  if (outcome === 'gear overload') return true;
  const isLost = outcome.startsWith('tipped') || outcome === 'propellant exhausted';
  const isBroken = strokeUsed.some((used) => gaveWay({ strokeUsed: used }));
  return isLost && isBroken && decidingContact(card)?.contact.limit?.gear === 0;
}

function restWords(words: string, last: LastMotion): string {
  if (isMoving(last)) return words + ON_IMPACT;
  return `${words}, ${hasFallen(last.angle) ? AND_FELL : BUT_STANDS}`;
}

export function headlineOf(card: JudgedDescent, last: LastMotion): string {
  const { outcome } = card;
  const worst = decidingContact(card)?.contact;
  if (outcome === 'propellant exhausted' && worst !== undefined) return restWords(HEADLINE.exhausted, last);
  if (outcome === 'gear overload' || isCrash(card)) return restWords(HEADLINE.gaveWay, last);
  if (outcome === 'upright inside limit' || outcome === 'upright outside limit') {
    const isThin = worst?.band === 'thin';
    const words = outcome === 'upright outside limit' ? HEADLINE.luck : isThin ? HEADLINE.thin : HEADLINE.upright;
    const again = metAgain(card);
    return again === undefined ? words : `${words}, ${AFTER[again]}`;
  }
  const words = outcomeHeadline(outcome, fallOnLevel(card, worst));
  const isToldAlready = outcome.startsWith('tipped') || !hasFallen(last.angle);
  return isToldAlready ? words : `${words}, ${AND_FELL}`;
}

/** Slower than this at contact, there is no way that it was moving [m/s]. */
const STILL = 0.05;

/** How the side that the outcome names lies to the travel, for ground that is called level; undefined on a slope. */
function fallOnLevel({ outcome }: JudgedDescent, contact: JudgedContact | undefined): FallOnLevel | undefined {
  if (contact === undefined || !isLevel(contact.arrival.slope)) return undefined;
  const { slope, vx } = contact.arrival;
  if (Math.abs(vx) < STILL) return 'still';
  // the outcome goes by the least slope, and where there is none by the travel
  const travelsDownhill = slope === 0 || vx * slope < 0;
  return travelsDownhill === (outcome === 'tipped downhill') ? 'along' : 'against';
}

function whyOf(card: JudgedDescent, { height, vy }: Pick<DescentState, 'height' | 'vy'>): string {
  const worst = decidingContact(card)?.contact;
  const isDry = card.outcome === 'propellant exhausted';
  if (worst !== undefined && !isDry && isCrash(card)) return whyOverloaded(worst);
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
      if (worst !== undefined) return WHY.offSiteAfter;
      return vy > 0 ? WHY.climbed(distance(height, 0), card.propellantLeft === 0) : WHY.offSite(distance(height, 0));
    case 'propellant exhausted':
      return worst === undefined ? WHY.exhaustedAloft : WHY.exhausted(fall(worst)[0], isCrash(card));
    case 'aborted':
      return WHY.aborted;
    case 'stopped':
      return WHY.stopped;
  }
  return card.outcome satisfies never;
}

function whyUpright(card: JudgedDescent, worst: JudgedContact): string {
  const { limit, arrival } = worst;
  const arrived = speed(Math.abs(arrival.vx));
  const tip = limit?.tip;
  if (limit === undefined) return WHY.noLimit(...fall(worst));
  const isOutside = worst.band === 'outside';
  if (isOutside && tip === 0) return WHY.luckAtAnySpeed(leanOf(worst));
  if (isOutside) return WHY.luck(arrived, speed(tip ?? limit.upTo));
  const again = metAgain(card);
  if (again !== undefined) {
    const [first = worst] = card.contacts;
    return WHY.again({ how: again, down: fall(first)[0] }, whenOf(card), {
      arrived,
      limit: limitWords(worst),
      isFar: worst.band === 'desired',
    });
  }
  if (tip === undefined) return WHY.never(arrived, speed(limit.upTo, 1));
  return worst.band === 'thin' ? WHY.thin(arrived, speed(tip)) : WHY.inside(arrived, speed(tip));
}

function whyTipped(card: JudgedDescent, worst: JudgedContact): string {
  const { limit, arrival } = worst;
  const arrived = speed(Math.abs(arrival.vx));
  if (limit === undefined) return WHY.noLimit(...fall(worst));
  const where = isLevel(arrival.slope) ? 'level' : 'slope';
  const at = { slope: degrees(Math.abs(arrival.slope)), down: fall(worst)[0] };
  if (limit.tip === 0) return WHY.tipsAtAnySpeed(leanOf(worst), at);
  if (worst.band !== 'outside' || limit.tip === undefined) return WHY.tippedAnyway(arrived, limitWords(worst));
  const again = whenOf(card) === 'first' ? undefined : metAgain(card);
  return WHY.tipped(again, { arrived, tip: speed(limit.tip), where });
}

/** At which of the contacts it was decided, in an order that can be told. */
function whenOf(card: JudgedDescent): 'first' | 'second' | 'later' {
  const index = decidingContact(card)?.index ?? 0;
  if (index === 0) return 'first';
  return index === 1 && card.contactCount === card.contacts.length ? 'second' : 'later';
}

/** Share of the fall from which on what it moved sideways is worth naming beside it [-]. */
const ASKEW = 0.3;

function whyOverloaded(worst: JudgedContact): string {
  const { limit, arrival } = worst;
  const [down, across] = fall(worst);
  if (limit?.gear !== undefined && limit.gear > 0 && limit.gear <= Math.abs(arrival.vx))
    return WHY.overloadByDrift(down, across, speed(limit.gear));
  const isAskew = leanOf(worst) !== undefined || Math.abs(arrival.vx) > ASKEW * arrival.descentRate;
  return isAskew ? WHY.overloadAskew(down, across, leanOf(worst)) : WHY.overload(down);
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
