import { createHash, formatHash, mixFloat64 } from '../math/hash.ts';
import { feetMemory, isFootDown, isUsedUp, loadOf, soleZ, strokeOf } from '../touchdown/planarFeet.ts';
import type { DescentState, LegState } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { footX, footY, lowestFoot, slopeUnderFeet } from './feet.ts';

/** What the descent looks like now: plain data, new at each call, of which the world keeps nothing. */
export function readDescent(descent: Descent): DescentState {
  const { motion } = descent;
  return {
    tick: descent.tick,
    phase: descent.phase,
    x: motion.x,
    y: motion.y,
    vx: motion.vx,
    vy: motion.vy,
    angle: motion.angle,
    rate: motion.rate,
    thrust: descent.thrust,
    propellant: descent.propellant,
    mass: descent.bulk.mass,
    height: lowestFoot(descent),
    slope: slopeUnderFeet(descent),
    legs: descent.setup.lander.legs.map((_, leg) => readLeg(descent, leg)),
    commanded: { ...descent.commanded },
    contacts: descent.arrivals.map((arrival) => ({ ...arrival })),
    ...(descent.touchdown && { touchdown: { ...descent.touchdown } }),
    ...(descent.outcome && { outcome: descent.outcome }),
  };
}

function readLeg(descent: Descent, leg: number): LegState {
  const { feet } = descent;
  const stroke = strokeOf(feet, leg);
  const usedUp = isUsedUp(feet, leg);
  return {
    footX: footX(descent, leg),
    footY: footY(descent, leg),
    footZ: soleZ(feet, leg),
    inContact: isFootDown(feet, leg),
    stroke,
    strokeUsed: usedUp ? 1 : stroke / feet.strokes[leg]!,
    usedUp,
    load: loadOf(feet, leg),
  };
}

/**
 * Hash of motion, engine, force and memory of every foot in the order of the legs, full width and in fixed order. Phase, counters of rest and what planck keeps of a resting hull are not in it.
 * Equal hashes mean equal bits, on whatever engine they were computed.
 */
export function hashDescent(descent: Descent): string {
  const { motion, feet } = descent;
  const hash = createHash();
  mixFloat64(hash, descent.tick);
  mixFloat64(hash, motion.x);
  mixFloat64(hash, motion.y);
  mixFloat64(hash, motion.angle);
  mixFloat64(hash, motion.vx);
  mixFloat64(hash, motion.vy);
  mixFloat64(hash, motion.rate);
  mixFloat64(hash, descent.thrust);
  mixFloat64(hash, descent.propellant);
  mixFloat64(hash, feet.forceX);
  mixFloat64(hash, feet.forceY);
  mixFloat64(hash, feet.moment);
  for (const value of feetMemory(feet)) mixFloat64(hash, value);
  return formatHash(hash);
}
