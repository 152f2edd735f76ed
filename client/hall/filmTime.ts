import type { TouchdownSample } from '../../engine/touchdown/index.ts';
import type { WatchedTouchdown } from '../workbench/studies.ts';

/** Slower than this nothing is seen to move [m/s], [rad/s]; the film goes on a little longer [s]. */
const STILL = 0.05;
export const LINGER = 0.4;

/** The newest sample of that time. */
export function sampleAt(samples: readonly TouchdownSample[], time: number): number {
  const next = samples.findIndex((sample) => sample.time > time);
  return next < 0 ? samples.length - 1 : Math.max(0, next - 1);
}

/** Until nothing is seen to move any more [s]. */
export function lengthOf(film: WatchedTouchdown | string): number {
  if (typeof film === 'string') return 0;
  const moving = film.result.history?.findLast(
    ({ velocity, rates }) => Math.hypot(...velocity) > STILL || Math.hypot(...rates) > STILL,
  );
  return (moving?.time ?? 0) + LINGER;
}
