import { followArrival } from './followArrival.ts';
import { stageAt } from '../touchdown/legCrush.ts';
import type { Descent } from './descentRecord.ts';
import { footHeight, overhang } from './feet.ts';
import { isHullDown } from './hullBody.ts';
import { hasBottomed } from './sectionLander.ts';
import { FLYING_AGAIN_ABOVE, FOOT_CLEAR_TICKS, HULL_STRIKE } from './thresholds.ts';

/** Left, right. */
const LEGS = [0, 1] as const;

/** After the steps of a tick: what touched, what crushed, what was overloaded, and how it arrived. */
export function followContacts(descent: Descent): void {
  const leftDown = descent.legs[0].touched;
  const rightDown = descent.legs[1].touched;
  followFeet(descent);
  followStages(descent);
  followHull(descent);
  followArrival(descent, leftDown, rightDown);
  followBalance(descent);
}

function followFeet(descent: Descent): void {
  const { legs, contact, tick, before } = descent;
  for (const i of LEGS) {
    const clear = contact.clear[i];
    const { touched } = legs[i];
    legs[i].touched = false;
    contact.clear[i] = touched ? 0 : clear + 1;
    if (!touched || clear < FOOT_CLEAR_TICKS) continue;
    descent.events.push({ kind: 'footDown', tick, leg: i, speed: -before.vy });
  }
  if (legs[0].inContact && legs[1].inContact) contact.bothDown = true;
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
