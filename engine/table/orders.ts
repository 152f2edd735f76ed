import type { Orders } from '../descent/index.ts';
import type { DescentState } from '../world/descent.ts';

/** Ordered descent rate, whole tenths of a meter a second, positive downwards [dm/s]. */
export const DESCENT_RATE_RANGE_TENTHS = { least: -20, most: 60 } as const;
/** Ordered drift, whole tenths of a meter a second, positive to the right [dm/s]. */
export const DRIFT_RANGE_TENTHS = { least: -50, most: 50 } as const;

/**
 * What stands until someone orders otherwise: hold the height, drift on. Left alone a lander then never comes down by itself, from any start; ordered on as it
 * moves, from a low one it would land.
 */
export function firstOrders({ vx }: DescentState): Orders {
  const { least, most } = DRIFT_RANGE_TENTHS;
  // a descent may begin faster than anybody may order
  const driftTenths = Math.round(Math.max(least, Math.min(most, 10 * vx))) + 0;
  return { descentRateTenths: 0, across: 'drift', driftTenths, leanDeg: 0 };
}
