import type { DescentState } from '../world/descent.ts';
import { addressedDeviate } from './noise.ts';
import { reported, type SensorError, type SensorTiming } from './sensorSpec.ts';
import type { SensorScene } from './suite.ts';
import { SOURCES } from './sources.ts';

/** Angle from upright, found from outside (stars, horizon) and not summed up. Common practice: 10 Hz, 0.1 degrees. */
export const ATTITUDE_REFERENCE = {
  period: 6,
  firstTick: 4,
  latency: 2,
  /** [rad], [-], [rad] */
  error: { sigma: (0.1 * Math.PI) / 180, sigmaShare: 0, resolution: (0.01 * Math.PI) / 180 },
  /** It loses what it looks at when the body turns faster [rad/s]: 30 degrees a second. */
  mostRate: Math.PI / 6,
} as const satisfies SensorTiming & { error: SensorError; mostRate: number };

const STREAM = SOURCES.indexOf('attitudeReference');

/** Writes the angle; false, and nothing written, in a fast turn. */
export function measureAttitudeReference(scene: SensorScene, truth: DescentState, into: number[]): boolean {
  const { error, mostRate } = ATTITUDE_REFERENCE;
  if (Math.abs(truth.rate) > mostRate) return false;
  into[0] = reported(error, truth.angle, addressedDeviate(scene.key, STREAM, truth.tick, 0));
  return true;
}
