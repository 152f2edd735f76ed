import type { DescentState } from '../world/descent.ts';
import { addressedDeviate } from './noise.ts';
import { reported, type SensorError, type SensorTiming } from './sensorSpec.ts';
import type { SensorScene } from './suite.ts';
import { SOURCES } from './sources.ts';

/**
 * Which way the ground passes below, and roughly how fast: in steps of half a meter a second. Independent of the velocity radar, which is
 * what it is for. Dust hides the ground when the engine burns near it. Common practice for rate and noise; crews of crewed landings spoke of dust from some
 * 30 m down and of losing sight of the ground in the last 10 m or so (from memory).
 */
export const SURFACE_CAMERA = {
  period: 30,
  firstTick: 5,
  latency: 12,
  /** [m/s], [-], [m/s] */
  error: { sigma: 0.2, sigmaShare: 0.1, resolution: 0.5 },
  /** Dust hides the ground below this height of the lowest foot while the engine burns [m]. */
  dustHeight: 10,
  /** Too far to see it pass above this height of the lowest foot [m]. */
  mostHeight: 300,
  /** It looks past the ground when the body leans more [rad]: 40 degrees. */
  mostTilt: (40 * Math.PI) / 180,
} as const satisfies SensorTiming & { error: SensorError; dustHeight: number; mostHeight: number; mostTilt: number };

const STREAM = SOURCES.indexOf('surfaceCamera');

/** Writes the drift; false, and nothing written, where the ground is not seen. */
export function measureSurfaceCamera(scene: SensorScene, truth: DescentState, into: number[]): boolean {
  const { dustHeight, mostHeight, mostTilt, error } = SURFACE_CAMERA;
  const isDusty = truth.thrust > 0 && truth.height < dustHeight;
  if (isDusty || truth.height > mostHeight || Math.abs(truth.angle) > mostTilt) return false;
  into[0] = reported(error, truth.vx, addressedDeviate(scene.key, STREAM, truth.tick, 0));
  return true;
}
