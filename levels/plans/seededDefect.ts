import type { Fault } from '../../engine/faults/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import { nextUniform, seedRandom } from '../../engine/math/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import type { Start } from './findStart.ts';

/** Draws of the defect, apart from those of the ground and of sensor trouble. */
const STREAM = 79;

/** When a leak begins: between these shares of the time that the start would need at its own rate of descent. */
const EARLIEST = 0.1;
const LATEST = 0.3;
/** What runs out each second, of the load at the start [-]: with nobody at the line the tanks are dry in 10 to 16 s, before most landers are down. */
const FLOW = { least: 0.05, most: 0.08 };

/** How soft a leg may be [-]. */
const SOFTNESS = { least: 0.25, most: 0.5 };

/** What a defect is drawn for. */
export interface Troubled {
  readonly seed: number;
  readonly start: Start;
  readonly lander: Lander;
  /** [kg] */
  readonly propellant: number;
}

/** What is wrong with the engine or its tanks: a line that leaks, or an engine that does not shut down when it is told to. Drawn by the seed. */
export function seededEngineDefect({ seed, start, propellant }: Troubled): readonly Fault[] {
  const random = seedRandom(seed, STREAM);
  if (nextUniform(random) < 0.5) return [{ source: 'engine', kind: 'cutOffFails', fromTick: 1, parameters: {} }];
  const share = EARLIEST + (LATEST - EARLIEST) * nextUniform(random);
  const fromTick = Math.round((share * start.height * TICK_RATE) / start.descentRate);
  const flow = propellant * (FLOW.least + (FLOW.most - FLOW.least) * nextUniform(random));
  return [{ source: 'tanks', kind: 'leak', fromTick, parameters: { flow } }];
}

/** A leg that is softer than built, and is not shown locked. Which, and how soft, is drawn by the seed. */
export function seededLegDefect({ seed, lander }: Troubled): readonly Fault[] {
  const random = seedRandom(seed, STREAM);
  const leg = Math.floor(lander.legs.length * nextUniform(random));
  const factor = SOFTNESS.least + (SOFTNESS.most - SOFTNESS.least) * nextUniform(random);
  return [
    { source: 'legs', kind: 'legSoft', fromTick: 0, parameters: { leg, factor } },
    { source: 'legs', kind: 'indicationAbsent', fromTick: 0, parameters: { leg } },
  ];
}
