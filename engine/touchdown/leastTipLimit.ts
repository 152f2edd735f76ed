import { assert } from '../assert.ts';
import type { TouchdownKernel } from './kernel.ts';
import { tipsAtSpeed } from './speedSampler.ts';
import { firstLimitOf, tipLimit, type TipLimit, type TipLimitOptions } from './tipLimit.ts';
import type { TouchdownConditions } from './touchdownCase.ts';

const TURN = 2 * Math.PI;

/** Directions tried all round besides the azimuths given: every degree. */
const TRIED = 360;
const SPACING = TURN / TRIED;

/** Where a fast lander tips at middle speeds alone, islands lie far below the least limit found elsewhere: one of these shares of it is tried every degree too [-]. */
const LOWER_SHARES = [0.9, 0.75, 0.6];

/** A lower limit is followed from azimuth to azimuth in steps down to this [rad]: a sixteenth of a degree. */
const FINEST = SPACING / 16;

/** The least tip limit over directions of travel, and where it is. */
interface LeastTipLimit extends TipLimit {
  /** Azimuth of the least tip limit [rad]; undefined when none tips. */
  readonly tipAzimuth: number | undefined;
  /** Azimuth of the least speed at which the gear is used up, of those given and those that tip below others [rad]; undefined when it is at none. */
  readonly gearAzimuth: number | undefined;
}

/** One lander by its direction of travel. */
interface Directions {
  readonly kernel: TouchdownKernel;
  readonly arrivalToward: (azimuth: number) => TouchdownConditions;
  readonly options: TipLimitOptions;
}

/**
 * The least tip limit of one lander over directions of travel, from azimuths such as all its critical ones, rising within a turn. Each is looked at only below
 * the least so far, so the whole costs far less than each for itself; the gear likewise. Needs at least one azimuth.
 *
 * Between them the limit of a lander that rocks has clefts, a fraction of a degree wide at the speeds next to the least, each leaning over many degrees to
 * its lowest point. So it is tried every degree whether the lander tips just below the least, and a cleft that is met is followed down.
 */
export function leastTipLimit(
  kernel: TouchdownKernel,
  azimuths: readonly number[],
  arrivalToward: (azimuth: number) => TouchdownConditions,
  options: TipLimitOptions = {},
): LeastTipLimit {
  const directions = { kernel, arrivalToward, options };
  let least: LeastTipLimit | undefined;
  for (const azimuth of azimuths) least = lookToward(directions, azimuth, least, least?.speed ?? options.upTo);
  assert(least !== undefined, 'there is an azimuth to look toward');
  least = followDown(directions, least, [widestGap(azimuths) / 2, SPACING / 2], lookLower);
  least = followDown(directions, least, [SPACING / 2, FINEST], tryBelow);
  for (let i = 0; i < TRIED; i++) {
    for (const share of [1, LOWER_SHARES[i % LOWER_SHARES.length]!]) {
      const before: LeastTipLimit = least;
      least = tryBelow(directions, (i + 0.5) * SPACING, least, share);
      if (least !== before) least = followDown(directions, least, [SPACING / 2, FINEST], tryBelow);
    }
  }
  return least;
}

/** Goes from the azimuth of the least limit to one beside it while that is lower, in steps that are halved when it is lower on neither side. */
function followDown(
  directions: Directions,
  from: LeastTipLimit,
  [firstStep, finest]: readonly [number, number],
  look: (directions: Directions, azimuth: number, least: LeastTipLimit) => LeastTipLimit,
): LeastTipLimit {
  let least = from;
  for (let step = firstStep; step > finest && least.tipAzimuth !== undefined && least.speed !== 0;) {
    const { tipAzimuth, speed } = least;
    for (const beside of [tipAzimuth - step, tipAzimuth + step]) least = look(directions, beside, least);
    if (least.speed === speed) step /= 2;
  }
  return least;
}

/** Looks at all speeds below the least limit so far. */
function lookLower(directions: Directions, azimuth: number, least: LeastTipLimit): LeastTipLimit {
  return lookToward(directions, azimuth, least, least.speed ?? least.upTo);
}

/** Looks at them only where the lander tips just below the least limit so far, or at a share of that speed. */
function tryBelow(directions: Directions, azimuth: number, least: LeastTipLimit, share = 1): LeastTipLimit {
  const { kernel, arrivalToward, options } = directions;
  const below = share * ((least.speed ?? least.upTo) - least.tolerance);
  const tips = below > 0 && tipsAtSpeed(kernel, arrivalToward(azimuth), below, options);
  return tips ? lookToward(directions, azimuth, least, below) : least;
}

/** The lesser of the least limit so far and that toward an azimuth. */
function lookToward(
  { kernel, arrivalToward, options }: Directions,
  azimuth: number,
  least: LeastTipLimit | undefined,
  upTo: number | undefined,
): LeastTipLimit {
  const found = tipLimit(kernel, arrivalToward(azimuth), { ...options, ...(upTo !== undefined && { upTo }) });
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

function widestGap(azimuths: readonly number[]): number {
  const gaps = azimuths.map((azimuth, i) => (azimuths[i + 1] ?? azimuths[0]! + TURN) - azimuth);
  return Math.max(...gaps);
}
