import { groundHeight, type Terrain } from '../ground/terrain.ts';
import { addressedDeviate, noiseKey } from '../sensors/noise.ts';
import type { StartState } from '../world/descent.ts';
import type { MotionFigures } from './estimate.ts';

/** How far off a crew starts: common practice after a braking phase under its own navigation, handed over with radar already locked. */
export const START_SIGMA: MotionFigures = { x: 5, height: 2, vx: 0.3, vy: 0.3, angle: (0.5 * Math.PI) / 180 };

/** Stream of the errors of the start. */
const START_STREAM = 301;

/** A true motion in the figures of the estimate. */
export function trueFigures({ x, y, vx, vy, angle }: StartState, ground: Terrain): MotionFigures {
  return { x, height: y - groundHeight(ground, x), vx, vy, angle };
}

/** What is believed at the start: a known motion, off by what the seed draws. */
export function firstGuess(known: MotionFigures, sigma: MotionFigures, seed: number): MotionFigures {
  const key = noiseKey(seed);
  const off = (component: number): number => addressedDeviate(key, START_STREAM, 0, component);
  return {
    x: known.x + sigma.x * off(0),
    height: known.height + sigma.height * off(1),
    vx: known.vx + sigma.vx * off(2),
    vy: known.vy + sigma.vy * off(3),
    angle: known.angle + sigma.angle * off(4),
  };
}
