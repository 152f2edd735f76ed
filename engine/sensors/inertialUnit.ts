import { cos, sin } from '../math/trig.ts';
import { TICK_DT } from '../world/constants.ts';
import type { DescentState } from '../world/descent.ts';
import { addressedDeviate, noiseKey } from './noise.ts';
import type { SensorTiming } from './sensorSpec.ts';
import type { SensorScene } from './suite.ts';
import { SOURCES } from './sources.ts';

/**
 * Specific force and body rate, each the mean over the tick that ends now, as units that sum up increments give it. Sits at the center of mass.
 * A constant bias each, drawn once a descent (drift in flight is not modeled), and white noise. Common practice for a tactical unit:
 * accelerometers 2e-3 m/s² (0.2 mg) and 0.03 m/s/√h, gyroscope 3 deg/h and 0.05 deg/√h. Rounding is far below the noise and left out.
 */
export const INERTIAL_UNIT = {
  period: 1,
  firstTick: 0,
  latency: 0,
  /** Standard deviation of the bias of each accelerometer [m/s²]. */
  forceBias: 2e-3,
  /** Of the noise of each accelerometer, a tick [m/s²]: 0.03 m/s/√h over a tick. */
  forceSigma: 0.03 / 60 / Math.sqrt(TICK_DT),
  /** Standard deviation of the bias of the gyroscope [rad/s]. */
  rateBias: (3 * Math.PI) / 180 / 3600,
  /** Of the noise of the gyroscope, a tick [rad/s]: 0.05 deg/√h over a tick. */
  rateSigma: (0.05 * Math.PI) / 180 / 60 / Math.sqrt(TICK_DT),
  /** [m/s²] */
  mostForce: 200,
  /** [rad/s] */
  mostRate: 5,
} as const satisfies SensorTiming & Readonly<Record<string, number>>;

const STREAM = SOURCES.indexOf('inertialUnit');
/** Components of the noise are 0 to 2; the biases take these at tick 0. */
const BIAS_COMPONENT = 8;

/** The biases of one descent: across, along [m/s²], rate [rad/s]. */
export function inertialBiases(seed: number): number[] {
  const { forceBias, rateBias } = INERTIAL_UNIT;
  const key = noiseKey(seed);
  return [forceBias, forceBias, rateBias].map(
    (sigma, axis) => sigma * addressedDeviate(key, STREAM, 0, BIAS_COMPONENT + axis),
  );
}

/**
 * Writes specific force and rate; false, and nothing written, beyond its range and before there was a tick.
 *
 *   f = Rᵀ·(Δv/Δt + (0, g)),  ω = Δθ/Δt            specific force is acceleration less gravity [Groves2013]
 *
 * R  attitude at the middle of the tick       Δv, Δθ  change over the tick       g  surface gravity [m/s²]
 */
export function measureInertialUnit(scene: SensorScene, truth: DescentState, into: number[]): boolean {
  const { before, gravity, key, biases } = scene;
  if (before.tick < 0) return false;
  const middle = (before.angle + truth.angle) / 2;
  const right = (truth.vx - before.vx) / TICK_DT;
  const up = (truth.vy - before.vy) / TICK_DT + gravity;
  const across = right * cos(middle) + up * sin(middle);
  const along = up * cos(middle) - right * sin(middle);
  const rate = (truth.angle - before.angle) / TICK_DT;
  const { mostForce, mostRate, forceSigma, rateSigma } = INERTIAL_UNIT;
  if (Math.abs(across) > mostForce || Math.abs(along) > mostForce || Math.abs(rate) > mostRate) return false;
  into[0] = across + biases[0]! + forceSigma * addressedDeviate(key, STREAM, truth.tick, 0);
  into[1] = along + biases[1]! + forceSigma * addressedDeviate(key, STREAM, truth.tick, 1);
  into[2] = rate + biases[2]! + rateSigma * addressedDeviate(key, STREAM, truth.tick, 2);
  return true;
}
