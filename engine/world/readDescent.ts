import { isFootDown, isUsedUp, loadOf, soleZ, strokeOf } from '../touchdown/planarFeet.ts';
import type { DescentState, LegState } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { readHeading } from './facings.ts';
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
    ...(descent.heading && { facing: readHeading(descent.section.facings, descent.heading) }),
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
