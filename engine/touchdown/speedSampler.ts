import { runTouchdown } from './runTouchdown.ts';
import type { SpeedSample } from './leastSpeed.ts';
import type { TouchdownKernel } from './kernel.ts';
import type { TouchdownConditions, TouchdownOptions, TouchdownResult } from './touchdownCase.ts';

/**
 * Highest friction that ground is expected to have under a footpad [-]. Model tests on powdered pumice saw 0.7 to 1.0 [NTRS20070030982];
 * the quarter above it, for pads that dig in, is common practice without a source.
 */
export const HIGHEST_FRICTION = 1.25;

/** How the touchdowns behind a limit are run. */
export type SampleOptions = Pick<TouchdownOptions, 'step' | 'damping'>;

/** Frictions at which a limit is looked for, the higher first, since most landers tip there first. */
export function frictionsOf({ ground: { friction } }: TouchdownConditions): readonly number[] {
  return friction < HIGHEST_FRICTION ? [HIGHEST_FRICTION, friction] : [friction];
}

/** True when a touchdown ended on its side. */
export function hasTipped({ outcome }: Pick<TouchdownResult, 'outcome'>): boolean {
  return outcome === 'tipped downhill' || outcome === 'tipped uphill';
}

/** Runs of one arrival at one friction by horizontal speed [m/s]; each is made once, and not made longer than it takes to answer what is asked. */
interface SpeedSampler {
  /** Whether it tips, and its margin. */
  readonly tipping: (speed: number) => SpeedSample;
  /** Whether a leg is used up or a load limit passed. What is asked of both is cheaper asked here first. */
  readonly gear: (speed: number) => boolean;
}

export function speedSampler(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  friction: number,
  options: SampleOptions,
): SpeedSampler {
  const known = new Map<number, SpeedSample & { readonly gear?: boolean }>();
  const tipping = (speed: number): SpeedSample => {
    const before = known.get(speed);
    if (before !== undefined) return before;
    const result = runAt(kernel, conditions, { friction, speed }, { ...options, only: 'tipping' });
    const sample = { tips: hasTipped(result), margin: result.leastMargin.value };
    known.set(speed, sample);
    return sample;
  };
  const gear = (speed: number): boolean => {
    const before = known.get(speed);
    if (before?.gear !== undefined) return before.gear;
    const result = runAt(kernel, conditions, { friction, speed }, { ...options, only: 'tipping and gear' });
    const isSpent = result.limitsHit.some((limit) => limit === 'crush exhausted' || limit === 'load');
    known.set(speed, { tips: hasTipped(result), margin: result.leastMargin.value, gear: isSpent });
    return isSpent;
  };
  return { tipping, gear };
}

/** True when an arrival tips at a horizontal speed along its travel [m/s], at the friction of the ground or at HIGHEST_FRICTION. */
export function tipsAtSpeed(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  speed: number,
  options: SampleOptions,
): boolean {
  return frictionsOf(conditions).some((friction) =>
    hasTipped(runAt(kernel, conditions, { friction, speed }, { ...options, only: 'tipping' })),
  );
}

/** The speed in `conditions` only gives the sense of travel. */
function runAt(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  { friction, speed }: { readonly friction: number; readonly speed: number },
  { step, damping, only }: SampleOptions & Pick<TouchdownOptions, 'only'>,
): TouchdownResult {
  const sense = conditions.state.horizontalSpeed < 0 ? -1 : 1;
  return runTouchdown(
    kernel,
    {
      ...conditions,
      ground: { ...conditions.ground, friction },
      state: { ...conditions.state, horizontalSpeed: sense * speed },
    },
    {
      ...(only !== undefined && { only }),
      ...(step !== undefined && { step }),
      ...(damping !== undefined && { damping }),
    },
  );
}
