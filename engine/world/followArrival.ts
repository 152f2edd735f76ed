import type { Lander } from '../lander/lander.ts';
import { staticTiltOf } from '../pivot/tripLimit.ts';
import type { Arrival, BetweenContacts, TouchdownState } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { slopeUnderFeet } from './feet.ts';
import { CRASH_ENERGY, FOOT_CLEAR_TICKS, MAX_ARRIVALS } from './thresholds.ts';

/** Notes a contact: something of the lander on the ground after all of it had been clear for FOOT_CLEAR_TICKS. */
export function followArrival(descent: Descent): void {
  const { contact, tick, arrivals, feet } = descent;
  let left = false;
  let right = false;
  let feetDown = false;
  for (let leg = 0; leg < feet.count; leg++) {
    if (!contact.touched[leg]!) continue;
    feetDown = true;
    left ||= feet.across[leg]! < 0;
    right ||= feet.across[leg]! > 0;
  }
  if (!feetDown && !contact.hullDown) {
    contact.offGround += 1;
    // commanded, not left: the thrust of a contact takes its lag to die away
    if (descent.commanded.thrustPercent > 0) contact.burned = true;
    return;
  }
  const isContact = contact.offGround >= FOOT_CLEAR_TICKS;
  const after = arrivals.length === 0 ? 'first' : contact.burned ? 're-light' : 'hop';
  contact.offGround = 0;
  contact.burned = false;
  if (!isContact) return;
  // the first contact of a landing: none before, or the lander flew again
  const beginsLanding = contact.firstTick < 0;
  if (beginsLanding) contact.firstTick = tick;
  // a hull that meets the ground first is down on no side
  const firstFoot = left === right ? 'both' : left ? 'left' : 'right';
  noteArrival(descent, after, firstFoot, beginsLanding);
}

/**
 * Keeps the state in which the lander met the ground, and makes it the touchdown when it begins a landing, or is harder than the
 * contacts of this landing before it. What the feet do after that, while the body settles or tips, follows from it.
 */
function noteArrival(
  descent: Descent,
  after: BetweenContacts,
  firstFoot: TouchdownState['firstFoot'],
  beginsLanding: boolean,
): void {
  const { before, bulk, section, heading, setup, contact, arrivals, touchdown } = descent;
  const body = { ...bulk, halfStance: section.halfStance };
  // a lander that tumbles meets the ground again and again, but arrives no more
  const tumbles = contact.pastBalance !== 0 || Math.abs(before.angle) >= staticTiltOf(body);
  if (touchdown !== undefined && tumbles) return;
  const arrival: Arrival = {
    tick: descent.tick,
    x: before.x,
    vx: before.vx,
    descentRate: -before.vy,
    angle: before.angle,
    rate: before.rate,
    slope: slopeUnderFeet(descent),
    mass: bulk.mass,
    firstFoot,
    ...(heading !== undefined && heading.steps !== 0 && { facing: heading.steps }),
    after,
  };
  if (arrivals.length === MAX_ARRIVALS) arrivals.splice(softest(arrivals), 1);
  arrivals.push(arrival);
  if (touchdown !== undefined && !beginsLanding && hardness(arrival) <= hardness(touchdown)) return;
  const { after: _after, ...state } = arrival;
  descent.touchdown = state;
  if ((hardness(state) * bulk.mass) / 2 > CRASH_ENERGY * crushEnergy(setup.lander)) contact.crashTick = descent.tick;
}

/** What all legs together take up by crushing [J]. */
function crushEnergy({ legs }: Lander): number {
  return legs.flatMap(({ stages }) => stages).reduce((sum, { force, stroke }) => sum + force * stroke, 0);
}

/** Index of the softest contact after the first. */
function softest(arrivals: readonly Arrival[]): number {
  let least = 1;
  arrivals.forEach((arrival, i) => {
    if (i > 0 && hardness(arrival) < hardness(arrivals[least] ?? arrival)) least = i;
  });
  return least;
}

/** Twice the kinetic energy of the center of mass over the mass [m²/s²]. */
function hardness({ vx, descentRate }: TouchdownState): number {
  return vx * vx + descentRate * descentRate;
}
