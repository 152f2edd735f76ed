import { assert } from '../assert.ts';
import type { TouchdownKernel } from './kernel.ts';
import { firstLimitOf, tipLimit, type TipLimit, type TipLimitOptions } from './tipLimit.ts';
import type { TouchdownConditions } from './touchdownCase.ts';

/** The least tip limit of several arrivals, and of which it is. */
export interface LeastTipLimit extends TipLimit {
  /** Index of the arrival with the least tip limit; undefined when none tips. */
  readonly tipIndex: number | undefined;
  /** Index of the arrival with the least speed at which the gear is used up; undefined when it is at none. */
  readonly gearIndex: number | undefined;
}

/**
 * The least tip limit of one lander over several arrivals, such as all its critical azimuths. Each is looked at only below the least so far, so the
 * whole costs far less than each for itself; the gear likewise. Needs at least one arrival.
 */
export function leastTipLimit(
  kernel: TouchdownKernel,
  arrivals: readonly TouchdownConditions[],
  options: TipLimitOptions = {},
): LeastTipLimit {
  let least: LeastTipLimit | undefined;
  for (const [index, arrival] of arrivals.entries()) {
    const upTo = least?.speed ?? options.upTo;
    const found = tipLimit(kernel, arrival, { ...options, ...(upTo !== undefined && { upTo }) });
    const tips = least === undefined || found.speed !== undefined ? found : least;
    const gear = (found.gearSpeed ?? Infinity) < (least?.gearSpeed ?? Infinity);
    const limit: LeastTipLimit = {
      ...tips,
      upTo: least?.upTo ?? found.upTo,
      tipIndex: found.speed === undefined ? least?.tipIndex : index,
      gearSpeed: gear ? found.gearSpeed : least?.gearSpeed,
      gearIndex: gear ? index : least?.gearIndex,
    };
    least = { ...limit, first: firstLimitOf(limit) };
  }
  assert(least !== undefined, 'there is an arrival to look at');
  return least;
}
