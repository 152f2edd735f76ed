import type { DescentState } from '../world/descent.ts';
import type { SensorTiming } from './sensorSpec.ts';
import type { SensorScene } from './suite.ts';

/** A switch in each leg's latch. Common practice: twice a second, no noise. */
export const LEG_INDICATIONS = { period: 30, firstTick: 3, latency: 1 } as const satisfies SensorTiming;

/** Writes 1 for each leg that is locked, else 0. */
export function measureLegIndications(scene: SensorScene, truth: DescentState, into: number[]): boolean {
  for (let leg = 0; leg < truth.legs.length; leg++) into[leg] = scene.unlocked[leg] === true ? 0 : 1;
  return true;
}
