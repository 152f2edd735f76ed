import { expect, it } from 'vitest';
import { AT_REST, stepSwing } from '../../../engine/slosh/index.ts';
import { attitudeAt } from '../../support/turningBody.ts';

/** Where the swing stands after four seconds of turning in so many steps a second. */
function after(perSecond: number): number {
  const body = { size: 0.1, pace: 2 };
  const rateAt = (i: number) => attitudeAt(body, i / perSecond).rate;
  let now = AT_REST;
  for (let i = 1; i <= 4 * perSecond; i += 1) {
    const felt = { across: 0, along: 1.62, rateChange: rateAt(i) - rateAt(i - 1) };
    now = stepSwing(now, { length: 0.222, hingeAbove: -0.3, damping: 0.03 }, felt, 1 / perSecond);
  }
  return now.angle;
}

it('[SL10] the stepped swing is of second order in the step', () => {
  const exact = after(3840);
  const errors = [30, 60, 120, 240].map((perSecond) => Math.abs(after(perSecond) - exact));
  for (const [i, error] of errors.slice(1).entries()) {
    const ratio = (errors[i] ?? 0) / error;
    expect(ratio).toBeGreaterThan(3.6);
    expect(ratio).toBeLessThan(4.4);
  }
});
