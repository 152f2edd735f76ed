import type { DescentState } from '../world/descent.ts';
import { addressedDeviate } from './noise.ts';
import { reported, type SensorError, type SensorTiming } from './sensorSpec.ts';
import type { SensorScene } from './suite.ts';
import { SOURCES } from './sources.ts';

/** Usable propellant left. Swinging liquid makes a gauge coarse: common practice is 1 % of the full load, here with a step of 0.5 kg, once a second. */
export const PROPELLANT_GAUGE = {
  period: 60,
  firstTick: 1,
  latency: 6,
  /** Of the load at the start [-]. */
  sigmaOfLoad: 0.01,
  /** [kg] */
  resolution: 0.5,
} as const satisfies SensorTiming & { sigmaOfLoad: number; resolution: number };

const STREAM = SOURCES.indexOf('propellantGauge');

/** The error of a gauge on tanks that held so much at the start [kg]. */
export function gaugeError(load: number): SensorError {
  return { sigma: PROPELLANT_GAUGE.sigmaOfLoad * load, sigmaShare: 0, resolution: PROPELLANT_GAUGE.resolution };
}

/** Writes the mass, never below none: a gauge has no marks there. */
export function measurePropellantGauge(scene: SensorScene, truth: DescentState, into: number[]): boolean {
  const shown = reported(scene.gauge, truth.propellant, addressedDeviate(scene.key, STREAM, truth.tick, 0));
  into[0] = Math.max(0, shown);
  return true;
}
