import type { DescentState } from '../world/descent.ts';
import { groundRange } from './groundRange.ts';
import { addressedDeviate } from './noise.ts';
import { reported, type SensorError, type SensorTiming } from './sensorSpec.ts';
import type { SensorScene } from './suite.ts';
import { SOURCES } from './sources.ts';

/**
 * Range along the body axis to the true ground, so that a lean and a bowl below both show. Common practice for small landers: 10 Hz, 0.1 m and
 * 1 % of range, to 500 m. Its mount is calibrated out: the range is that from the center of mass.
 */
export const ALTIMETER = {
  period: 6,
  firstTick: 0,
  latency: 3,
  /** [m], [-], [m] */
  error: { sigma: 0.1, sigmaShare: 0.01, resolution: 0.01 },
  /** [m] */
  least: 0.3,
  most: 500,
  /** No echo comes back from a beam that leans more [rad]: 45 degrees. Common practice. */
  mostTilt: Math.PI / 4,
} as const satisfies SensorTiming & { error: SensorError; least: number; most: number; mostTilt: number };

const STREAM = SOURCES.indexOf('altimeter');

/** Writes the range; false, and nothing written, where there is no echo. */
export function measureAltimeter(scene: SensorScene, truth: DescentState, into: number[]): boolean {
  if (Math.abs(truth.angle) > ALTIMETER.mostTilt) return false;
  const range = groundRange(scene.terrain, truth, ALTIMETER.most);
  if (range === undefined || range < ALTIMETER.least) return false;
  into[0] = reported(ALTIMETER.error, range, addressedDeviate(scene.key, STREAM, truth.tick, 0));
  return true;
}
