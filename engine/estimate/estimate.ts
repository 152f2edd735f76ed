import { INERTIAL_UNIT } from '../sensors/inertialUnit.ts';
import { forEachSource } from '../sensors/reading.ts';
import { LONGEST_LATENCY } from '../sensors/sensorSpec.ts';
import type { Source } from '../sensors/sources.ts';
import { assert } from '../assert.ts';
import type { FootOffset } from './clearance.ts';
import type { MapGround } from './mapGround.ts';
import { createTrack, type SourceTrack } from './sourceTrack.ts';
import { STATES } from './state.ts';

/** Motion as it is believed or how far off that may be: [m], [m/s], [rad]. */
export interface MotionFigures {
  readonly x: number;
  /** Of the center of mass above the ground straight below. */
  readonly height: number;
  readonly vx: number;
  readonly vy: number;
  readonly angle: number;
}

export interface EstimateSetup {
  /** [m/s²] */
  readonly gravity: number;
  readonly map: MapGround;
  /** Where the feet are in the body, seen from the center of mass. */
  readonly feet: readonly FootOffset[];
  /** What is believed at tick 0. */
  readonly start: MotionFigures;
  /** Standard deviations of it. */
  readonly startSigma: MotionFigures;
}

/** So many means are remembered: a report is held against what was believed when its sample was taken. */
export const REMEMBERED = LONGEST_LATENCY + 1;

/** What is believed, and how far it may be off. Plain data, changed in place by stepEstimate. */
export interface Estimate {
  /** Its feet change places when the lander turns about its long axis. */
  setup: EstimateSetup;
  tick: number;
  /** See state.ts. */
  readonly mean: Float64Array;
  /** STATES x STATES, by rows. */
  readonly covariance: Float64Array;
  /** The means of the last ticks, in a ring by tick. */
  readonly past: Float64Array;
  /** Body rate by the gyroscope, less its bias; 0 without one [rad/s]. */
  rate: number;
  readonly tracks: Readonly<Record<Source, SourceTrack>>;
}

/** What is believed before the first reading. */
export function createEstimate(setup: EstimateSetup): Estimate {
  const { start, startSigma } = setup;
  const mean = new Float64Array(STATES);
  mean.set([start.x, start.height, start.vx, start.vy, start.angle]);
  const covariance = new Float64Array(STATES * STATES);
  const sigmas = [startSigma.x, startSigma.height, startSigma.vx, startSigma.vy, startSigma.angle];
  sigmas.push(INERTIAL_UNIT.forceBias, INERTIAL_UNIT.forceBias, INERTIAL_UNIT.rateBias, 1);
  for (const [state, sigma] of sigmas.entries()) {
    assert(
      sigma > 0 && sigma < Infinity,
      `a starting deviation is above 0 and finite, came ${sigma} for state ${state}`,
    );
    covariance[state * STATES + state] = sigma * sigma;
  }
  const past = new Float64Array(REMEMBERED * STATES);
  past.set(mean);
  return { setup, tick: 0, mean, covariance, past, rate: 0, tracks: forEachSource(createTrack) };
}
