import { createHash, formatHash, mixFloat64 } from '../math/hash.ts';
import { totalStroke } from '../touchdown/legCrush.ts';
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
    legs: [readLeg(descent, 0), readLeg(descent, 1)],
    commanded: { ...descent.commanded },
    contacts: descent.arrivals.map((arrival) => ({ ...arrival })),
    ...(descent.touchdown && { touchdown: { ...descent.touchdown } }),
    ...(descent.outcome && { outcome: descent.outcome }),
  };
}

/** Stroke and load are those of one strut of the legs that the section merges. */
function readLeg(descent: Descent, index: 0 | 1): LegState {
  const { leg } = descent.section;
  const work = descent.legs[index];
  return {
    footX: footX(descent, index),
    footY: footY(descent, index),
    inContact: work.inContact,
    stroke: work.crushed,
    strokeUsed: work.crushed / totalStroke(leg.law),
    load: work.load / leg.legCount,
  };
}

/**
 * Hash of everything that decides the next tick, full width and in fixed order: motion, engine, legs left to right.
 * Equal hashes mean equal bits, on whatever engine they were computed.
 */
export function hashDescent(descent: Descent): string {
  const { motion, legs } = descent;
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
  for (const work of legs) {
    mixFloat64(hash, work.crushed);
    mixFloat64(hash, work.stretch);
    mixFloat64(hash, work.drag);
    mixFloat64(hash, work.load);
  }
  return formatHash(hash);
}
