import {
  outsideCheckedRange,
  pivotAtTouchdown,
  rangedShape,
  type DescentSetup,
  type TouchdownState,
} from '../../engine/index.ts';
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

/** As shown elsewhere on the sheet, so that a rate just at the end of the range is not called outside it. */
function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}
