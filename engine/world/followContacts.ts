import { feetStage, isFootDown } from '../touchdown/planarFeet.ts';
import type { Descent } from './descentRecord.ts';
import { lowestFoot, overhang } from './feet.ts';
import { followArrival } from './followArrival.ts';
import { isHullDown } from './hullBody.ts';
import { FLYING_AGAIN_ABOVE, FOOT_CLEAR_TICKS } from './thresholds.ts';

/** Notes which feet are down after a physics step: what touches for a part of a tick alone counts too. */
export function noteFeet({ feet, contact }: Descent): void {
  for (let leg = 0; leg < feet.count; leg++) if (isFootDown(feet, leg)) contact.touched[leg] = true;
}

/** After the steps of a tick: what touched, what crushed, how it arrived, and whether it is past balance. */
export function followContacts(descent: Descent): void {
  followFeet(descent);
  followStages(descent);
  followHull(descent);
  followArrival(descent);
  followBalance(descent);
  descent.contact.touched.fill(false);
}

function followFeet(descent: Descent): void {
  const { feet, contact, tick, before } = descent;
  let left = false;
  let right = false;
  for (let leg = 0; leg < feet.count; leg++) {
    const clear = contact.clear[leg]!;
    const touched = contact.touched[leg]!;
    contact.clear[leg] = touched ? 0 : clear + 1;
    if (isFootDown(feet, leg)) {
      left ||= feet.across[leg]! < 0;
      right ||= feet.across[leg]! > 0;
    }
    if (touched && clear >= FOOT_CLEAR_TICKS) descent.events.push({ kind: 'footDown', tick, leg, speed: -before.vy });
  }
  if (left && right) contact.bothDown = true;
}

function followStages({ feet, contact, events, tick, setup }: Descent): void {
  for (let leg = 0; leg < feet.count; leg++) {
    const used = feetStage(feet, leg);
    while (contact.stages[leg]! < used) {
      const stage = contact.stages[leg]!;
      events.push({ kind: 'stageCrushed', tick, leg, stage });
      contact.stages[leg] = stage + 1;
      if (stage + 1 === setup.lander.legs[leg]?.stages.length) events.push({ kind: 'bottomed', tick, leg });
    }
  }
}

function followHull({ hull, contact, events, tick }: Descent): void {
  const isDown = isHullDown(hull);
  if (isDown && !contact.hullDown) events.push({ kind: 'hullDown', tick, speed: hull.strike });
  contact.hullDown = isDown;
}

/** Past balance: the center of mass hangs beyond all feet, once the gear has met the ground. */
function followBalance(descent: Descent): void {
  const { contact, tick } = descent;
  if (contact.firstTick < 0) return;
  // a body that bounces or tumbles leaves the ground for moments; only thrust takes it up again, and long enough that it comes down anew
  const mayFly = contact.offGround >= FOOT_CLEAR_TICKS && descent.commanded.thrustPercent > 0;
  if (mayFly && lowestFoot(descent) > FLYING_AGAIN_ABOVE) {
    // a new touchdown begins with the next contact
    contact.firstTick = -1;
    contact.bothDown = false;
    contact.pastBalance = 0;
    contact.lyingSince = -1;
    return;
  }
  contact.pastBalance = overhang(descent);
  if (contact.pastBalance === 0) contact.lyingSince = -1;
  else if (contact.hullDown && contact.lyingSince < 0) contact.lyingSince = tick;
}
