import { atan2 } from '../math/trig.ts';
import { staticTiltOf } from '../pivot/tripLimit.ts';
import { PHYSICS_REVISION } from '../world/constants.ts';
import type { Arrival, DescentSetup, DescentState } from '../world/descent.ts';
import { layOutSection } from '../world/layOutSection.ts';
import { pivotBodyAt } from './closedForm.ts';
import { cardOutcome, judgeContact } from './judgeContact.ts';
import type { JudgedContact, JudgedDescent, Scorecard } from './scorecardTypes.ts';

/** What the table says of a descent that is over, besides who flew it. */
export function scoreDescent(final: DescentState, setup: DescentSetup): JudgedDescent {
  const contacts = contactsToJudge(final.contacts).map((arrival) => judgeContact(setup, arrival));
  const worst = worstOf(contacts);
  const judged = worst === undefined ? undefined : contacts[worst];
  return {
    outcome: cardOutcome(final.outcome ?? 'stopped', judged),
    contacts,
    contactCount: final.contacts.length,
    ...(worst !== undefined && { worst }),
    ...(judged !== undefined && { staticTilt: staticTiltAtRest(final, setup) }),
    restTilt: Math.abs(final.angle),
    strokeUsed: final.legs.map((leg) => leg.strokeUsed),
    propellantLeft: final.propellant,
    physics: PHYSICS_REVISION,
  };
}

/**
 * The contacts that are held against a limit, in order: the first, the hardest of the others, and the last. Each costs a search by simulation, and a
 * lander that settles may touch down a dozen times at a few centimeters a second.
 */
function contactsToJudge(contacts: readonly Arrival[]): readonly Arrival[] {
  const hardest = contacts.reduce((most, _, i) => (i > 0 && (most === 0 || isHarder(i, most)) ? i : most), 0);
  return contacts.filter((_, i) => i === 0 || i === hardest || i === contacts.length - 1);

  function isHarder(i: number, than: number): boolean {
    return hardness(contacts[i]) > hardness(contacts[than]);
  }
}

/** Twice the kinetic energy of the center of mass over the mass [m²/s²]. */
function hardness(arrival: Arrival | undefined): number {
  return arrival === undefined ? 0 : arrival.vx * arrival.vx + arrival.descentRate * arrival.descentRate;
}

/** Index of the contact that used up most of its limit; the earlier of two alike. */
function worstOf(contacts: readonly JudgedContact[]): number | undefined {
  const used = contacts.map(shareUsed);
  return used.length === 0 ? undefined : used.indexOf(Math.max(...used));
}

function shareUsed({ arrival, limit }: JudgedContact): number {
  const reach = limit?.tip ?? limit?.upTo ?? 0;
  return reach > 0 ? Math.abs(arrival.vx) / reach : Infinity;
}

/** Toward the side over which it falls soonest. */
function staticTiltAtRest(final: DescentState, setup: DescentSetup): NonNullable<Scorecard['staticTilt']> {
  const section = layOutSection(setup.lander, setup.propellant, final.facing?.steps);
  const limit = staticTiltOf(pivotBodyAt(section, final.mass));
  const left = Math.min(tiltLeft(final, -1), tiltLeft(final, 1));
  return { limit, used: limit - left, left };
}

/**
 * Angle by which the lander, as it is, may still turn toward a side until its center of mass stands above the foot on that
 * side [rad]; negative when it is past it.
 *
 *   left = atan2(d, z)                                 geometry, same as α = atan(b / h) for a lander on level ground
 *
 * d  foot ahead of the center of mass, toward that side [m]      z  center of mass above the foot [m]
 *
 * What slope, attitude and crushed legs took of the static tilt is therefore all in it.
 */
function tiltLeft(state: DescentState, direction: 1 | -1): number {
  const [first] = state.legs;
  if (first === undefined) return 0;
  const foot = state.legs.reduce((outer, leg) => (direction * (leg.footX - outer.footX) > 0 ? leg : outer), first);
  return atan2(direction * (foot.footX - state.x), state.y - foot.footY);
}
