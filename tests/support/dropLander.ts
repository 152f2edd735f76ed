import type { Fault } from '../../engine/faults/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import { type Terrain } from '../../engine/ground/index.ts';
import {
  createDescent,
  stepDescent,
  type ControlInput,
  type Descent,
  type DescentEvent,
} from '../../engine/world/index.ts';
import { lowestFoot } from '../../engine/world/feet.ts';

/** Surface gravity of the Moon by GM / R², as in the check table [m/s²]. */
export const MOON = 1.62422;

export const COAST: ControlInput = { thrustPercent: 0, tiltDeg: 0 };

/** An even slope, + where it rises to the right [rad], long enough to tumble on. */
export function evenGround(slope = 0, friction = 0.7): Terrain {
  const heights = Array.from({ length: 401 }, (_, i) => (i - 200) * Math.tan(slope));
  return { firstX: -200, spacing: 1, heights, friction };
}

/** Hills of 0.2 m on a slope of 3 degrees: no two places of it are alike. `shift` moves all of it to the right [m]. */
export function rollingGround(shift = 0, friction = 0.7): Terrain {
  const heights = Array.from({ length: 401 }, (_, i) => 0.05 * (i - 200) + 0.2 * Math.sin(0.7 * i));
  return { firstX: -200 + shift, spacing: 1, heights, friction };
}

export interface Drop {
  readonly lander: Lander;
  readonly terrain?: Terrain;
  readonly gravity?: number;
  readonly vx?: number;
  /** Downward [m/s]. */
  readonly descentRate?: number;
  readonly angle?: number;
  readonly rate?: number;
  /** Of the lower foot above the ground at the start [m]. */
  readonly height?: number;
  readonly propellant?: number;
  readonly faults?: readonly Fault[];
  /** By how many edges it has turned before. */
  readonly facing?: number;
}

/** A lander whose lower foot is just above the ground at x = 0. */
export function dropLander(drop: Drop): Descent {
  const { lander, terrain = evenGround(), gravity = MOON, vx = 0, descentRate = 0, angle = 0, rate = 0 } = drop;
  const { height = 1e-6, propellant = 0, faults = [], facing } = drop;
  const setup = { lander, gravity, terrain, propellant, faults, ...(facing !== undefined && { facing }) };
  const start = { x: 0, angle, vx, vy: -descentRate, rate };
  // the height of the feet is linear in that of the center
  const high = lowestFoot(createDescent({ ...setup, start: { ...start, y: 100 } }));
  return createDescent({ ...setup, start: { ...start, y: 100 - high + height } });
}

/** Steps until the outcome, or for so many ticks; returns every event. */
export function settle(descent: Descent, ticks = 7200, input: ControlInput = COAST): readonly DescentEvent[] {
  const events: DescentEvent[] = [];
  for (let i = 0; i < ticks && descent.outcome === undefined; i++) events.push(...stepDescent(descent, input));
  return events;
}
