import { stageAt } from '../touchdown/legCrush.ts';
import { contactLimit } from './contactLimit.ts';
import type { TouchdownState } from './descent.ts';
import type { ContactHistory, Descent } from './descentRecord.ts';
import { footHeight, overhang, slopeUnderFeet } from './feet.ts';
import { isHullDown } from './hullBody.ts';
import { hasBottomed } from './sectionLander.ts';
import { FLYING_AGAIN_ABOVE, FOOT_CLEAR_TICKS, HULL_STRIKE } from './thresholds.ts';

/** Left, right. */
const LEGS = [0, 1] as const;

/** After the steps of a tick: what touched, what crushed, what was overloaded, and which contact is the worst so far. */
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
  if (contact.firstTick < 0) contact.firstTick = tick;
  // a body that already falls over has had the contact that decided
  if (contact.pastBalance === 0) noteContact(descent, down);
}

/**
 * Keeps the contact that decided: the first one outside the limit, or else the one that used up most of the margin.
 *
 * A contact of the trailing foot alone counts only until the leading foot has come down: the swing onto the leading foot is
 * a contact of its own, whose state the world knows, where the formula can only bound it.
 */
function noteContact(descent: Descent, firstFoot: TouchdownState['firstFoot']): void {
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
  const { direction, utilisation } = contactLimit({ ...bulk, halfStance: section.halfStance }, setup.gravity, state);
  const isLeading = firstFoot !== (direction === 1 ? 'left' : 'right');
  if (descent.touchdown !== undefined && !counts(contact, isLeading, utilisation)) return;
  descent.touchdown = state;
  contact.utilisation = utilisation;
  contact.ledDown = isLeading;
}

/** True when a new contact takes the place of the one kept so far. */
function counts(kept: ContactHistory, isLeading: boolean, utilisation: number): boolean {
  if (isLeading !== kept.ledDown) return isLeading;
  return kept.utilisation <= 1 && utilisation > kept.utilisation;
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
    if (contact.firstTick < 0) contact.firstTick = tick;
    // a lander that meets the ground with its hull first has met it all the same
    if (descent.touchdown === undefined) noteContact(descent, 'both');
    const isUsedUp = legs.some((work) => hasBottomed(section.leg, work));
    if (isUsedUp && hull.strike > HULL_STRIKE && contact.pastBalance === 0) contact.overloaded = true;
  }
  contact.hullDown = isDown;
}

/** Past balance: the center of mass hangs beyond both feet, once the gear has met the ground. */
function followBalance(descent: Descent): void {
  const { contact } = descent;
  if (contact.firstTick < 0) return;
  const isFlying =
    !contact.hullDown && footHeight(descent, 0) > FLYING_AGAIN_ABOVE && footHeight(descent, 1) > FLYING_AGAIN_ABOVE;
  if (isFlying) {
    // a new touchdown begins with the next contact
    contact.firstTick = -1;
    contact.bothDown = false;
    contact.pastBalance = 0;
    return;
  }
  contact.pastBalance = overhang(descent);
}
