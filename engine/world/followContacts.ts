import { staticTiltOf } from '../pivot/tripLimit.ts';
import { stageAt } from '../touchdown/legCrush.ts';
import { contactLimit } from './contactLimit.ts';
import type { TouchdownState } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { footHeight, overhang, slopeUnderFeet } from './feet.ts';
import { isHullDown } from './hullBody.ts';
import { hasBottomed } from './sectionLander.ts';
import { FLYING_AGAIN_ABOVE, FOOT_CLEAR_TICKS, HULL_STRIKE } from './thresholds.ts';

/** Left, right. */
const LEGS = [0, 1] as const;

/** After the steps of a tick: what touched, what crushed, what was overloaded, and how it arrived. */
export function followContacts(descent: Descent): void {
  followFeet(descent);
  followStages(descent);
  followHull(descent);
  followBalance(descent);
}

function followFeet(descent: Descent): void {
  const { legs, contact, tick, before } = descent;
  let down: TouchdownState['firstFoot'] | undefined;
  for (const i of LEGS) {
    const clear = contact.clear[i];
    const { touched } = legs[i];
    legs[i].touched = false;
    contact.clear[i] = touched ? 0 : clear + 1;
    if (!touched || clear < FOOT_CLEAR_TICKS) continue;
    down = down === undefined ? (i === 0 ? 'left' : 'right') : 'both';
    descent.events.push({ kind: 'footDown', tick, leg: i, speed: -before.vy });
  }
  if (legs[0].inContact && legs[1].inContact) contact.bothDown = true;
  if (down === undefined) return;
  const isFirst = contact.firstTick < 0;
  if (isFirst) contact.firstTick = tick;
  // who hops on under thrust arrives anew each time
  const isHop = descent.commanded.thrustPercent > 0 && contact.pastBalance === 0;
  if (isFirst || isHop) noteArrival(descent, down);
}

/**
 * Keeps the state in which the lander arrived: the first contact of a touchdown. Of several touchdowns, the lander having
 * flown again or hopped under thrust in between, the one that used up most of its limit. What the feet do after that, while
 * the body settles or tips, follows from it.
 */
function noteArrival(descent: Descent, firstFoot: TouchdownState['firstFoot']): void {
  const { before, bulk, section, setup, contact } = descent;
  const state: TouchdownState = {
    tick: descent.tick,
    x: before.x,
    vx: before.vx,
    descentRate: -before.vy,
    angle: before.angle,
    rate: before.rate,
    slope: slopeUnderFeet(descent),
    mass: bulk.mass,
    firstFoot,
  };
  const body = { ...bulk, halfStance: section.halfStance };
  const { utilisation } = contactLimit(body, setup.gravity, state);
  const leansTooFar = Math.abs(before.angle) >= staticTiltOf(body);
  // a lander that tumbles meets the ground again and again, but arrives no more
  if (descent.touchdown !== undefined && (leansTooFar || utilisation <= contact.utilisation)) return;
  descent.touchdown = state;
  contact.utilisation = utilisation;
}

function followStages(descent: Descent): void {
  const { legs, contact, section, tick } = descent;
  const { law } = section.leg;
  for (const i of LEGS) {
    const used = stageAt(law, legs[i].crushed);
    while (contact.stages[i] < used) {
      descent.events.push({ kind: 'stageCrushed', tick, leg: i, stage: contact.stages[i] });
      contact.stages[i] += 1;
      if (contact.stages[i] === law.stages.length) descent.events.push({ kind: 'bottomed', tick, leg: i });
    }
    if (legs[i].gaveWay && contact.pastBalance === 0) contact.overloaded = true;
  }
}

function followHull(descent: Descent): void {
  const { hull, contact, legs, section, tick } = descent;
  const isDown = isHullDown(hull);
  if (isDown && !contact.hullDown) {
    descent.events.push({ kind: 'hullDown', tick, speed: hull.strike });
    if (contact.firstTick < 0) {
      // a lander that meets the ground with its hull first has met it all the same
      contact.firstTick = tick;
      noteArrival(descent, 'both');
    }
    const isUsedUp = legs.some((work) => hasBottomed(section.leg, work));
    if (isUsedUp && hull.strike > HULL_STRIKE && contact.pastBalance === 0) contact.overloaded = true;
  }
  contact.hullDown = isDown;
}

/** Past balance: the center of mass hangs beyond both feet, once the gear has met the ground. */
function followBalance(descent: Descent): void {
  const { contact } = descent;
  if (contact.firstTick < 0) return;
  // a body that tumbles leaves the ground for moments; only thrust takes it up again
  const mayFly = !contact.hullDown && (contact.pastBalance === 0 || descent.commanded.thrustPercent > 0);
  const isFlying = mayFly && footHeight(descent, 0) > FLYING_AGAIN_ABOVE && footHeight(descent, 1) > FLYING_AGAIN_ABOVE;
  if (isFlying) {
    // a new touchdown begins with the next contact
    contact.firstTick = -1;
    contact.bothDown = false;
    contact.pastBalance = 0;
    return;
  }
  contact.pastBalance = overhang(descent);
}
