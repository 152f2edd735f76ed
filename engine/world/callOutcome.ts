import type { Outcome } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { slopeUnderFeet } from './feet.ts';
import { groundSpan } from './ground.ts';
import { REST_TICKS, SETTLE_LIMIT_TICKS, STILL_RATE, STILL_SPEED } from './thresholds.ts';

/** Calls the outcome when the lander has come to rest or has left the site. */
export function callOutcome(descent: Descent): void {
  const outcome = outcomeNow(descent);
  if (outcome === undefined) return;
  descent.outcome = outcome;
  descent.phase = 'at rest';
  // whoever stands has been shut down
  descent.commanded = { thrustPercent: 0, tiltDeg: descent.commanded.tiltDeg };
  descent.thrust = 0;
  descent.events.push({ kind: 'phase', tick: descent.tick, phase: 'at rest' });
  descent.events.push({ kind: 'outcome', tick: descent.tick, outcome });
}

function outcomeNow(descent: Descent): Outcome | undefined {
  const [first, last] = groundSpan(descent.setup.terrain);
  const { x } = descent.motion;
  if (x < first || x > last) return 'off site';
  if (!isAtRest(descent)) return undefined;
  const outcome = restingOutcome(descent);
  return descent.contact.ranDry && outcome !== 'upright' ? 'propellant exhausted' : outcome;
}

/**
 * Own rest detector; the world itself never sleeps. Standing on both feet or lying on the hull, and still for REST_TICKS
 * in a row. A body balanced on one foot does not count, however still.
 */
function isAtRest(descent: Descent): boolean {
  const { motion, legs, contact, tick } = descent;
  const isHeld = contact.hullDown || (legs[0].inContact && legs[1].inContact);
  const isStill =
    motion.vx * motion.vx + motion.vy * motion.vy < STILL_SPEED * STILL_SPEED && Math.abs(motion.rate) < STILL_RATE;
  contact.stillTicks = isHeld && isStill ? contact.stillTicks + 1 : 0;
  const isOverdue = contact.firstTick >= 0 && tick - contact.firstTick >= SETTLE_LIMIT_TICKS;
  return contact.stillTicks >= REST_TICKS || isOverdue;
}

function restingOutcome(descent: Descent): Outcome {
  const { contact, motion } = descent;
  if (contact.overloaded) return 'gear overload';
  const side = contact.pastBalance;
  if (side !== 0) {
    // of the ground on which it tripped, not of where it came to lie
    const slope = descent.touchdown?.slope ?? slopeUnderFeet(descent);
    // level ground falls nowhere: the direction of travel decides
    const downhill = slope !== 0 ? -Math.sign(slope) : Math.sign(descent.touchdown?.vx ?? motion.vx) || 1;
    return side === downhill ? 'tipped downhill' : 'tipped uphill';
  }
  return 'upright';
}
