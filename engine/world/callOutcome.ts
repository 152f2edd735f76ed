import { cos } from '../math/trig.ts';
import { anyUsedUp, isFootDown } from '../touchdown/planarFeet.ts';
import type { Outcome } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { footX, slopeUnderFeet } from './feet.ts';
import { groundSpan } from '../ground/terrain.ts';
import {
  CRASH_TICKS,
  LYING_LEAN,
  LYING_TICKS,
  REST_TICKS,
  SETTLE_LIMIT_TICKS,
  STILL_RATE,
  STILL_SPEED,
} from './thresholds.ts';

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
  if (!isAtRest(descent) && !isLying(descent) && !isCrashed(descent)) return undefined;
  const outcome = restingOutcome(descent);
  return descent.contact.ranDry && outcome !== 'upright' ? 'propellant exhausted' : outcome;
}

/**
 * Own rest detector; the world itself never sleeps. Standing on feet on both sides of the center of mass or lying on the hull, and
 * still for REST_TICKS in a row. A body balanced on one side does not count, however still.
 */
function isAtRest(descent: Descent): boolean {
  const { motion, contact, tick } = descent;
  const isStill =
    motion.vx * motion.vx + motion.vy * motion.vy < STILL_SPEED * STILL_SPEED && Math.abs(motion.rate) < STILL_RATE;
  const isResting = isStill && (contact.hullDown || standsAcross(descent));
  contact.stillTicks = isResting ? contact.stillTicks + 1 : 0;
  const isOverdue = contact.firstTick >= 0 && tick - contact.firstTick >= SETTLE_LIMIT_TICKS;
  return contact.stillTicks >= REST_TICKS || isOverdue;
}

function standsAcross(descent: Descent): boolean {
  let left = Infinity;
  let right = -Infinity;
  for (let leg = 0; leg < descent.feet.count; leg++) {
    if (!isFootDown(descent.feet, leg)) continue;
    const x = footX(descent, leg);
    left = Math.min(left, x);
    right = Math.max(right, x);
  }
  const { x } = descent.motion;
  return left < right && left <= x && x <= right;
}

/** Certain before it is still: far over, and on its hull. */
function isLying({ contact, motion, tick }: Descent): boolean {
  return contact.lyingSince >= 0 && tick - contact.lyingSince >= LYING_TICKS && cos(motion.angle) < cos(LYING_LEAN);
}

/** Certain before it is still: several times the energy that the gear takes up, and a leg used up by it. */
function isCrashed({ contact, feet, tick }: Descent): boolean {
  return contact.crashTick >= 0 && tick - contact.crashTick >= CRASH_TICKS && anyUsedUp(feet);
}

function restingOutcome(descent: Descent): Outcome {
  const { contact, motion } = descent;
  const side = contact.pastBalance;
  if (side !== 0) {
    // of the ground on which it tripped, not of where it came to lie
    const slope = descent.touchdown?.slope ?? slopeUnderFeet(descent);
    // level ground falls nowhere: the direction of travel decides
    const downhill = slope !== 0 ? -Math.sign(slope) : Math.sign(descent.touchdown?.vx ?? motion.vx) || 1;
    return side === downhill ? 'tipped downhill' : 'tipped uphill';
  }
  return anyUsedUp(descent.feet) ? 'gear overload' : 'upright';
}
