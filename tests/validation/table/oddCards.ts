import type { JudgedContact, Scorecard } from '../../../engine/table/index.ts';
import { MARGIN_BANDS, simulateArrival } from '../../../engine/table/index.ts';
import { hasTipped } from '../../../engine/touchdown/index.ts';
import { decidingContact, verdictOf } from '../../../client/panels/verdict.ts';
import type { LateFlight } from './flyLate.ts';

/** Leans beyond this lie, they do not stand [rad]. */
const LYING = Math.PI / 3;

/** What a scorecard must not say of a descent. */
const ODDITIES = [
  'inside the limit, and lies',
  'upright, and lies',
  'faster than its limit, not outside',
  'worst is not the worst',
  'headline is milder than the worst contact',
  'tipped, no contact outside',
  'tipped, no contact outside, the engine burned after contact',
] as const;
type Oddity = (typeof ODDITIES)[number];

export function oddities(card: Omit<Scorecard, 'crew'>, { burnedAfter }: LateFlight): readonly Oddity[] {
  const { outcome, contacts, restTilt, worst } = card;
  const lies = restTilt > LYING;
  const found: Oddity[] = [];
  if (outcome === 'upright inside limit' && lies) found.push('inside the limit, and lies');
  if (outcome === 'upright outside limit' && lies) found.push('upright, and lies');
  if (contacts.some(isTooFast)) found.push('faster than its limit, not outside');
  const named = worst === undefined ? undefined : contacts[worst];
  if (contacts.some((contact) => rank(contact) > rank(named))) found.push('worst is not the worst');
  const told = decidingContact({ ...card })?.contact;
  if (outcome.startsWith('upright') && rank(told) < rank(named))
    found.push('headline is milder than the worst contact');
  if (outcome.startsWith('tipped') && contacts.every(({ band }) => band !== 'outside'))
    found.push(
      burnedAfter > 0 ? 'tipped, no contact outside, the engine burned after contact' : 'tipped, no contact outside',
    );
  return found;
}

function rank(contact: JudgedContact | undefined): number {
  return contact === undefined ? -1 : MARGIN_BANDS.indexOf(contact.band);
}

function isTooFast({ arrival, limit, band }: JudgedContact): boolean {
  const reach = limit === undefined ? 0 : (limit.tip ?? limit.upTo);
  return Math.abs(arrival.vx) > reach && band !== 'outside';
}

/** In one line, enough to look for why. */
export function describeFlight(
  { setup, final, siteId, burnedAfter }: LateFlight,
  card: Omit<Scorecard, 'crew'>,
): string {
  const contacts = card.contacts.map(({ arrival, limit, band }) => {
    const simulated = simulateArrival(setup, arrival);
    const { after, tick, vx, descentRate, angle, rate } = arrival;
    return {
      after,
      tick,
      vx: round(vx),
      descentRate: round(descentRate),
      angle: round(angle),
      rate: round(rate),
      tip: limit?.tip,
      band,
      simulated: simulated === undefined ? 'none' : hasTipped(simulated) ? 'tips' : 'stands',
    };
  });
  const { headline, why } = verdictOf({ ...card }, final);
  const used = Math.max(...card.strokeUsed);
  return JSON.stringify({
    siteId,
    outcome: card.outcome,
    headline,
    why,
    restTilt: round(card.restTilt),
    used: round(used),
    ticks: final.tick,
    contactCount: card.contactCount,
    burnedAfter,
    contacts,
  });
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}
