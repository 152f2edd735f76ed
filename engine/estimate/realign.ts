import { INERTIAL_UNIT } from '../sensors/inertialUnit.ts';
import { resetState } from './covariance.ts';
import type { Estimate } from './estimate.ts';
import { ANGLE, BIAS_ACROSS, BIAS_ALONG, BIAS_RATE } from './state.ts';

/**
 * Starts afresh with the inertial unit: forgets what was learned of its biases, and takes the angle as uncertain as at the start, so that the other
 * sources set both anew within some seconds. Whether the lander flies so that this makes sense is for whoever orders it.
 */
export function realignInertialUnit(estimate: Estimate): void {
  const { mean, covariance, setup } = estimate;
  mean[BIAS_ACROSS] = 0;
  mean[BIAS_ALONG] = 0;
  mean[BIAS_RATE] = 0;
  const { forceBias, rateBias } = INERTIAL_UNIT;
  resetState(covariance, BIAS_ACROSS, forceBias * forceBias);
  resetState(covariance, BIAS_ALONG, forceBias * forceBias);
  resetState(covariance, BIAS_RATE, rateBias * rateBias);
  resetState(covariance, ANGLE, setup.startSigma.angle * setup.startSigma.angle);
}
