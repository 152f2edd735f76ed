/** When a sensor samples, and when its report comes. */
export interface SensorTiming {
  /** From sample to sample [tick]. */
  readonly period: number;
  /** Of the first sample, less than a period: sensors of one rate take turns [tick]. */
  readonly firstTick: number;
  /** From the sample to its report; at most LONGEST_LATENCY [tick]. */
  readonly latency: number;
}

/** No sensor of ours reports later than this after its sample [tick]. Who compares with the past must remember so much of it. */
export const LONGEST_LATENCY = 15;

/** How far a value may be off, and how it is written down. */
export interface SensorError {
  /** Standard deviation of the noise, in the unit of the value: this, plus `sigmaShare` of the value's magnitude. */
  readonly sigma: number;
  /** [-] */
  readonly sigmaShare: number;
  /** Least step between two values, in the unit of the value; 0: none. */
  readonly resolution: number;
}

/** Standard deviation of a value as it is reported: noise, and rounding as evenly spread over one step (its variance is step²/12). */
export function reportSigma(error: SensorError, value: number): number {
  const noise = error.sigma + error.sigmaShare * Math.abs(value);
  return Math.sqrt(noise * noise + (error.resolution * error.resolution) / 12);
}

/** A true value as it is reported, for a standard normal deviate. */
export function reported(error: SensorError, value: number, deviate: number): number {
  const noisy = value + (error.sigma + error.sigmaShare * Math.abs(value)) * deviate;
  return error.resolution === 0 ? noisy : Math.round(noisy / error.resolution) * error.resolution;
}
