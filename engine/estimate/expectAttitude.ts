import { ATTITUDE_REFERENCE } from '../sensors/attitudeReference.ts';
import { reportSigma } from '../sensors/sensorSpec.ts';
import type { Estimate } from './estimate.ts';
import type { Expectation } from './expectation.ts';
import { ANGLE } from './state.ts';

/** The angle itself. */
export function expectAttitude({ past }: Estimate, at: number, into: Expectation): boolean {
  into.value = past[at + ANGLE]!;
  into.row.fill(0);
  into.row[ANGLE] = 1;
  const sigma = reportSigma(ATTITUDE_REFERENCE.error, into.value);
  into.variance = sigma * sigma;
  into.blamed = ANGLE;
  return true;
}
