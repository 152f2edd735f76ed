import { UsageError } from './usageError.ts';

/** Between the rows of a table by azimuth, unless asked otherwise [deg]. */
export const DEFAULT_STEP_DEG = 15;

/** From 0 on, in equal steps round the lander [deg]. */
export function azimuthsDeg(stepDeg: number = DEFAULT_STEP_DEG): readonly number[] {
  const count = 360 / stepDeg;
  if (!Number.isInteger(count)) throw new UsageError(`--step: expected a divisor of 360 deg, got ${stepDeg}`);
  return Array.from({ length: count }, (_, index) => index * stepDeg);
}
