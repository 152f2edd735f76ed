import { groundHeight } from '../ground/terrain.ts';
import { cos, sin } from '../math/trig.ts';
import type { DescentState } from '../world/descent.ts';
import type { SensorTiming } from './sensorSpec.ts';
import type { SensorScene } from './suite.ts';

/** A probe hangs `probeLength` below each footpad and closes a switch at the ground; of no length it is a switch in the pad. Common practice: no noise. */
export const CONTACT_PROBES = { period: 1, firstTick: 0, latency: 1 } as const satisfies SensorTiming;

/** Writes 1 for each leg whose probe touches, else 0. */
export function measureContactProbes(scene: SensorScene, truth: DescentState, into: number[]): boolean {
  const { terrain, probeLength } = scene;
  const across = probeLength * sin(truth.angle);
  const down = probeLength * cos(truth.angle);
  for (let leg = 0; leg < truth.legs.length; leg++) {
    const { footX, footY, inContact } = truth.legs[leg]!;
    const clearance = footY - down - groundHeight(terrain, footX + across);
    into[leg] = inContact || clearance <= 0 ? 1 : 0;
  }
  return true;
}
