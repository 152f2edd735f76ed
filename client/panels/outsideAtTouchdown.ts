import { landerShape, outsideCheckedRange, rangedShape } from '../../engine/checks/index.ts';
import { pivotAtTouchdown } from '../../engine/table/index.ts';
import type { DescentSetup, TouchdownState } from '../../engine/world/index.ts';
import type { PlayedPlan } from '../plan.ts';
import { inDegrees } from '../text/numbers.ts';

/** What of a touchdown lies outside the range in which the trip limit was checked, one line each. */
export function outsideAtTouchdown(setup: DescentSetup, touchdown: TouchdownState): readonly string[] {
  const { body, condition } = pivotAtTouchdown(setup, touchdown);
  return outsideCheckedRange('trip limit', {
    gravity: condition.gravity,
    slopeDeg: inDegrees(condition.slope),
    descentRate: rounded(condition.descentRate ?? 0),
    rateDegPerSecond: rounded(inDegrees(condition.rate ?? 0)),
    ...rangedShape(body),
  });
}

/** The same for the simulation of that arrival, which meets the uneven ground of the site. */
export function outsideInSimulation({ setup, siteId }: PlayedPlan, touchdown: TouchdownState): readonly string[] {
  return outsideCheckedRange('touchdown simulation', {
    gravity: setup.gravity,
    slopeDeg: inDegrees(touchdown.slope),
    horizontalSpeed: rounded(touchdown.vx),
    descentRate: rounded(touchdown.descentRate),
    leanDeg: rounded(inDegrees(touchdown.angle)),
    rateDegPerSecond: rounded(inDegrees(touchdown.rate)),
    friction: setup.terrain.friction,
    site: siteId,
    ...landerShape(setup.lander),
  });
}

/** As shown elsewhere on the sheet, so that a rate just at the end of the range is not called outside it. */
function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}
