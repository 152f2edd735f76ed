import { realignInertialUnit, type Estimate, type EstimateView } from '../estimate/index.ts';

/** Aligning the inertial unit takes four seconds without a turn [tick]. Ours: long enough to be a decision. */
export const ALIGNING_TICKS = 240;

/** Level enough, by what is believed [rad], and without a turn [rad/s]. */
const LEVEL = Math.PI / 60;
const WITHOUT_TURN = Math.PI / 120;

/** What is left of an alignment after one more tick; it starts anew whenever the lander leans or turns. Done, it takes effect on the estimate. */
export function goOnAligning(left: number, estimate: Estimate, { angle, rate }: EstimateView): number | undefined {
  if (Math.abs(angle) > LEVEL || Math.abs(rate) > WITHOUT_TURN) return ALIGNING_TICKS;
  if (left > 1) return left - 1;
  realignInertialUnit(estimate);
  return undefined;
}
