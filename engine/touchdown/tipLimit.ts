import { firstSpeedThat, leastSpeedThatTips, type SpeedSample } from './leastSpeed.ts';
import { referenceSpeed } from './referenceSpeed.ts';
import { frictionsOf, speedSampler, type SampleOptions } from './speedSampler.ts';
import type { TouchdownKernel } from './kernel.ts';
import type { TouchdownConditions } from './touchdownCase.ts';

/** Coarse steps up to DENSE_SHARE times the reference speed, and the growth of each step after that [-]. */
const DENSE_STEPS = 16;
const DENSE_SHARE = 1.6;
const GROWTH = 1.25;

/** Speeds are looked at up to this many times the reference speed when nothing else is asked for [-]. */
const FARTHEST_SHARE = 4;

/** Width at which halving stops, over the reference speed [-]: some millimeters a second, below what friction and slope of any ground are known to. */
const TOLERANCE_SHARE = 1 / 1000;

/** Which of two limits is met first as the horizontal speed rises. */
export const FIRST_LIMITS = ['tip', 'gear', 'none'] as const;
export type FirstLimit = (typeof FIRST_LIMITS)[number];

/** How fast one arrival may move across the ground, all else as it is. Speeds are horizontal, along the travel, 0 or more [m/s]. */
export interface TipLimit {
  /** The simulation stands at this speed, and at each lower one looked at; 0: it tips even without; undefined: none up to `upTo`. */
  readonly speed: number | undefined;
  /** A speed at which the simulation tips, at most `tolerance` above; undefined with `speed`. */
  readonly tipsAt: number | undefined;
  /** [m/s] */
  readonly tolerance: number;
  /** Largest speed looked at [m/s]. */
  readonly upTo: number;
  /** Friction at which it tips at the least speed: that of the ground, or HIGHEST_FRICTION [-]. */
  readonly friction: number;
  /** Least speed at which a leg is used up or a load limit passed, up to the tip limit; 0: even without; undefined: none. */
  readonly gearSpeed: number | undefined;
  readonly first: FirstLimit;
  /** A speed above the limit at which it stands again, where a strip of speeds tips below it; undefined when none was seen or looked for. */
  readonly standsAgainAt: number | undefined;
}

export interface TipLimitOptions extends SampleOptions {
  /** Look no farther than this [m/s]. Default FARTHEST_SHARE times the closed form on level ground. */
  readonly upTo?: number;
  /** Also look above the limit for speeds at which it stands again; default false. */
  readonly strips?: boolean;
}

/**
 * The tip limit of one arrival: the least horizontal speed along its travel at which the touchdown simulation tips, everything else (descent rate,
 * attitude, body rates, ground, legs) as given, at the friction of the ground and at HIGHEST_FRICTION, whichever is less. The speed in
 * `conditions` only gives the sense of travel. Closed forms serve to choose the speeds looked at, nothing else.
 */
export function tipLimit(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  options: TipLimitOptions = {},
): TipLimit {
  const reference = referenceSpeed(kernel, conditions);
  const upTo = options.upTo ?? FARTHEST_SHARE * reference;
  const tolerance = TOLERANCE_SHARE * reference;
  let found: TipLimit = {
    speed: undefined,
    tipsAt: undefined,
    tolerance,
    upTo,
    friction: conditions.ground.friction,
    gearSpeed: undefined,
    first: 'none',
    standsAgainAt: undefined,
  };
  for (const friction of frictionsOf(conditions)) {
    const sample = speedSampler(kernel, conditions, friction, options);
    const speeds = coarseSpeeds(reference, found.speed ?? upTo);
    // gear that is used up faster than at the other friction does not matter
    const farthest = speeds.find((speed) => speed >= (found.gearSpeed ?? Infinity)) ?? upTo;
    // asked first, since a run that answers for the gear answers for tipping too, and not the other way round
    speeds.find((speed) => sample.gear(speed) || sample.tipping(speed).tips || speed >= farthest);
    const tip = leastSpeedThatTips(sample.tipping, speeds, tolerance);
    const standing = speeds.filter((speed) => speed <= Math.min(tip?.[0] ?? upTo, farthest));
    const gear = firstSpeedThat(sample.gear, standing, tolerance)?.[0];
    if (gear !== undefined && gear < (found.gearSpeed ?? Infinity)) found = { ...found, gearSpeed: gear };
    if (tip === undefined) continue;
    const [speed, tipsAt] = tip;
    const standsAgainAt = options.strips === true ? standsAbove(sample.tipping, reference, tipsAt, upTo) : undefined;
    found = { ...found, speed, tipsAt, friction, standsAgainAt };
  }
  return { ...found, first: firstLimitOf(found) };
}

/** What is met first: the gear where both are met at one speed. */
export function firstLimitOf({ speed, gearSpeed }: Pick<TipLimit, 'speed' | 'gearSpeed'>): FirstLimit {
  if (gearSpeed !== undefined && gearSpeed <= (speed ?? Infinity)) return 'gear';
  return speed === undefined ? 'none' : 'tip';
}

/** 0, even steps to DENSE_SHARE, growing ones after that, all below `end`, and `end`. */
function coarseSpeeds(reference: number, end: number): readonly number[] {
  const step = (DENSE_SHARE * reference) / DENSE_STEPS;
  const speeds: number[] = [];
  for (let i = 0; i <= DENSE_STEPS && i * step < end; i++) speeds.push(i * step);
  for (let speed = DENSE_SHARE * GROWTH * reference; speed < end; speed *= GROWTH) speeds.push(speed);
  speeds.push(end);
  return speeds;
}

function standsAbove(
  sample: (speed: number) => SpeedSample,
  reference: number,
  limit: number,
  upTo: number,
): number | undefined {
  return coarseSpeeds(reference, Math.min(upTo, DENSE_SHARE * reference)).find(
    (speed) => speed > limit && !sample(speed).tips,
  );
}
