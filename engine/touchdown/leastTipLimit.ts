import { assert } from '../assert.ts';
import type { TouchdownKernel } from './kernel.ts';
import { firstLimitOf, tipLimit, type TipLimit, type TipLimitOptions } from './tipLimit.ts';
import type { TouchdownConditions } from './touchdownCase.ts';

/** Times that the gaps beside the least azimuth are halved: to less than a degree from the gaps of a lander on up to eight legs. */
const NARROWINGS = 4;

/** The least tip limit over directions of travel, and where it is. */
interface LeastTipLimit extends TipLimit {
  /** Azimuth of the least tip limit [rad]; undefined when none tips. */
  readonly tipAzimuth: number | undefined;
  /** Azimuth of the least speed at which the gear is used up [rad]; undefined when it is at none. */
  readonly gearAzimuth: number | undefined;
}

/**
 * The least tip limit of one lander over directions of travel, from azimuths such as all its critical ones, rising within a turn. Each is looked at only below
 * the least so far, so the whole costs far less than each for itself; the gear likewise. Then the gaps on both sides of the least are halved
 * NARROWINGS times toward it, since the worst direction of an unlucky lander lies between edges and feet. Needs at least one azimuth.
 */
export function leastTipLimit(
  kernel: TouchdownKernel,
  azimuths: readonly number[],
  arrivalToward: (azimuth: number) => TouchdownConditions,
  options: TipLimitOptions = {},
): LeastTipLimit {
  assert(azimuths.length > 0, 'there is an azimuth to look toward');
  let least: LeastTipLimit | undefined;
  const look = (azimuth: number): void => {
    least = lesserOf(kernel, least, arrivalToward(azimuth), azimuth, options);
  };
  azimuths.forEach(look);
  assert(least !== undefined, 'an azimuth has been looked toward');
  const at = azimuths.indexOf(least.tipAzimuth ?? Number.NaN);
  if (at < 0 || azimuths.length < 2) return least;
  const turn = 2 * Math.PI;
  const last = azimuths.length - 1;
  let before = azimuths[at]! - (at === 0 ? azimuths[last]! - turn : azimuths[at - 1]!);
  let after = (at === last ? azimuths[0]! + turn : azimuths[at + 1]!) - azimuths[at]!;
  for (let i = 0; i < NARROWINGS && least.speed !== 0; i++) {
    const middle: number = least.tipAzimuth ?? azimuths[at]!;
    [before, after] = [before / 2, after / 2];
    look(middle - before);
    look(middle + after);
  }
  return least;
}

function lesserOf(
  kernel: TouchdownKernel,
  least: LeastTipLimit | undefined,
  arrival: TouchdownConditions,
  azimuth: number,
  options: TipLimitOptions,
): LeastTipLimit {
  const upTo = least?.speed ?? options.upTo;
  const found = tipLimit(kernel, arrival, { ...options, ...(upTo !== undefined && { upTo }) });
  const tips = least === undefined || found.speed !== undefined ? found : least;
  const gear = (found.gearSpeed ?? Infinity) < (least?.gearSpeed ?? Infinity);
  const limit: LeastTipLimit = {
    ...tips,
    upTo: least?.upTo ?? found.upTo,
    tipAzimuth: found.speed === undefined ? least?.tipAzimuth : azimuth,
    gearSpeed: gear ? found.gearSpeed : least?.gearSpeed,
    gearAzimuth: gear ? azimuth : least?.gearAzimuth,
  };
  return { ...limit, first: firstLimitOf(limit) };
}
