import { cos, sin } from '../math/trig.ts';
import type { DescentState } from '../world/descent.ts';
import { addressedDeviate } from './noise.ts';
import { reported, type SensorError, type SensorTiming } from './sensorSpec.ts';
import type { SensorScene } from './suite.ts';
import { SOURCES } from './sources.ts';

/**
 * Velocity over the ground in body components, by the Doppler shift of several beams. Common practice for small landers: 10 Hz, 0.05 m/s and 1 %;
 * no lock when the body leans beyond 25 degrees or its feet are within 2 m of the ground. ([Amzajerdian2022] reaches a few cm/s with light.)
 */
export const VELOCITY_RADAR = {
  period: 6,
  firstTick: 2,
  latency: 3,
  /** Each component [m/s], [-], [m/s]. */
  error: { sigma: 0.05, sigmaShare: 0.01, resolution: 0.01 },
  /** Largest component [m/s]. */
  most: 100,
  /** [rad] */
  mostTilt: (25 * Math.PI) / 180,
  /** Of the lowest foot above the ground [m]. */
  leastHeight: 2,
  /** Of the lowest foot above the ground [m]. */
  mostHeight: 500,
} as const satisfies SensorTiming & {
  error: SensorError;
  most: number;
  mostTilt: number;
  leastHeight: number;
  mostHeight: number;
};

const STREAM = SOURCES.indexOf('velocityRadar');

/** Writes both components; false, and nothing written, without lock. */
export function measureVelocityRadar(scene: SensorScene, truth: DescentState, into: number[]): boolean {
  const { most, mostTilt, leastHeight, mostHeight, error } = VELOCITY_RADAR;
  if (Math.abs(truth.angle) > mostTilt) return false;
  if (truth.height < leastHeight || truth.height > mostHeight) return false;
  const across = truth.vx * cos(truth.angle) + truth.vy * sin(truth.angle);
  const along = truth.vy * cos(truth.angle) - truth.vx * sin(truth.angle);
  if (Math.abs(across) > most || Math.abs(along) > most) return false;
  into[0] = reported(error, across, addressedDeviate(scene.key, STREAM, truth.tick, 0));
  into[1] = reported(error, along, addressedDeviate(scene.key, STREAM, truth.tick, 1));
  return true;
}
