import type { Engine } from '../lander/lander.ts';
import type { ControlInput, DescentState } from '../world/descent.ts';
import { lever } from './thrust.ts';

/** Rate at which an aborted landing climbs away [m/s], and time in which it means to reach it [s]. Common practice, no source. */
const CLIMB_RATE = 5;
const RATE_TIME = 1;

/** What flies an aborted landing: upright and up, whatever it was doing. It looks at the state alone. */
export function climbAway(engine: Engine, gravity: number, state: DescentState): ControlInput {
  const up = Math.max(0, gravity + (CLIMB_RATE - state.vy) / RATE_TIME);
  return { thrustPercent: lever(engine, state.mass * up), tiltDeg: 0 };
}
