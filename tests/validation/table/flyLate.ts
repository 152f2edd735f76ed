import { groundHeight } from '../../../engine/ground/index.ts';
import type { Lander } from '../../../engine/lander/index.ts';
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import { pilot, STEADY } from '../../../engine/descent/index.ts';
import {
  createDescent,
  readDescent,
  stepDescent,
  type ControlInput,
  type DescentSetup,
  type DescentState,
} from '../../../engine/world/index.ts';
import { createGround, SITES } from '../../../levels/index.ts';
import { COAST, MOON } from '../../support/dropLander.ts';

const DEGREE = Math.PI / 180;

/** After this a flight is taken as it is [ticks]: five minutes. */
const LONGEST = 18_000;

export interface LateFlight {
  readonly setup: DescentSetup;
  readonly final: DescentState;
  readonly siteId: string;
  /** How long the engine was commanded on after the first contact [ticks]. */
  readonly burnedAfter: number;
}

/**
 * One descent of a lander to one of the sites on the Moon, drawn from a seed: the steady pilot from some 10 m up, and from a height of 0.5 to 8 m on
 * controls at random, each held for a sixth of a second to a second. First contact shuts the engine down, as at a table; half of the flights go on at
 * random for up to two seconds after it, the others leave it so.
 */
export function flyLate(lander: Lander, seed: number): LateFlight {
  const random = seedRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  const site = SITES[Math.floor(between(0, SITES.length))]!;
  const terrain = createGround(site, seed);
  const x = between(-60, 60);
  const start = {
    x,
    y: groundHeight(terrain, x) + 12 + between(0, 6),
    angle: between(-4, 4) * DEGREE,
    vx: between(-2.5, 2.5),
    vy: -between(0.5, 2.5),
    rate: between(-2, 2) * DEGREE,
  };
  const setup = { lander, gravity: MOON, terrain, start, propellant: between(10, 100) };
  const lateBelow = between(0.5, 8);
  const pressedFor = between(0, 1) < 0.5 ? 0 : between(0, 120);
  const descent = createDescent(setup);
  const craft = { engine: lander.engine, gravity: MOON };
  let drawn: ControlInput = COAST;
  let until = 0;
  let state = readDescent(descent);
  let burnedAfter = 0;
  while (state.outcome === undefined && state.tick < LONGEST) {
    const [first] = state.contacts;
    const isLate = state.height < lateBelow || first !== undefined;
    const isOver = first !== undefined && state.tick >= first.tick + pressedFor;
    if (isLate && state.tick >= until) {
      const thrustPercent = between(0, 1) < 0.4 ? 0 : Math.round(between(0, 100));
      drawn = { thrustPercent, tiltDeg: Math.round(between(-15, 15)) };
      until = state.tick + Math.round(between(10, 60));
    }
    if (first !== undefined && first.tick === state.tick) drawn = { ...drawn, thrustPercent: 0 };
    const input = isOver ? COAST : isLate ? drawn : pilot(STEADY, craft, state);
    stepDescent(descent, input);
    state = readDescent(descent);
    if (first !== undefined && state.commanded.thrustPercent > 0) burnedAfter += 1;
  }
  return { setup, final: state, siteId: site.id, burnedAfter };
}
