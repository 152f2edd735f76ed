import { reportSigma } from '../sensors/sensorSpec.ts';
import { SURFACE_CAMERA } from '../sensors/surfaceCamera.ts';
import type { Estimate } from './estimate.ts';
import type { Expectation } from './expectation.ts';
import { VX } from './state.ts';

/** The horizontal velocity itself. */
export function expectCamera({ past }: Estimate, at: number, into: Expectation): boolean {
  into.value = past[at + VX]!;
  into.row.fill(0);
  into.row[VX] = 1;
  const sigma = reportSigma(SURFACE_CAMERA.error, into.value);
  into.variance = sigma * sigma;
  into.blamed = VX;
  return true;
}
