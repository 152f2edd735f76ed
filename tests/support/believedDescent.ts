import {
  createEstimate,
  drawMap,
  feetOf,
  firstGuess,
  ORBITAL_SURVEY,
  START_SIGMA,
  stepEstimate,
  trueFigures,
  type Estimate,
  type Judgments,
  type MapGround,
} from '../../engine/estimate/index.ts';
import type { Fault } from '../../engine/faults/index.ts';
import { pilot, STEADY } from '../../engine/descent/index.ts';
import type { Terrain } from '../../engine/ground/index.ts';
import {
  createReadings,
  createSuite,
  readSensors,
  type Readings,
  type SensorSuite,
} from '../../engine/sensors/index.ts';
import { createDescent, readDescent, stepDescent, type DescentState } from '../../engine/world/index.ts';
import { createGround, findSite, firstLanding } from '../../levels/index.ts';
import { MOON } from './dropLander.ts';

/** A truth, tick by tick, and the ground it is over. */
export interface TrueDescent {
  readonly truth: readonly DescentState[];
  readonly terrain: Terrain;
}

/** Flown by the steady pilot from the truth, over a site, up to its first contact. */
export function flyTruly(siteId: string, seed: number): TrueDescent {
  const { setup } = firstLanding(seed);
  const site = findSite(siteId);
  if (site === undefined) throw new Error(`No site ${siteId}.`);
  const terrain = createGround(site, seed);
  const descent = createDescent({ ...setup, terrain });
  const craft = { engine: setup.lander.engine, gravity: setup.gravity };
  const truth = [readDescent(descent)];
  while (truth.at(-1)!.touchdown === undefined && descent.outcome === undefined) {
    stepDescent(descent, pilot(STEADY, craft, truth.at(-1)!));
    truth.push(readDescent(descent));
  }
  return { truth, terrain };
}

export interface BelievedTick {
  readonly estimate: Estimate;
  readonly readings: Readings;
  readonly suite: SensorSuite;
  readonly state: DescentState;
}

export interface Belief {
  readonly seed: number;
  readonly faults?: readonly Fault[];
  readonly judgmentsAt?: (tick: number) => Judgments;
  /** Default: drawn by the seed. */
  readonly map?: MapGround;
}

/** Sensors and estimate over a truth, with a start drawn by the seed; `watch` sees each tick. */
export function believe(
  { truth, terrain }: TrueDescent,
  { seed, faults = [], judgmentsAt = () => ({}), map = drawMap(terrain, seed, ORBITAL_SURVEY) }: Belief,
  watch: (tick: BelievedTick) => void,
): Estimate {
  const first = truth[0]!;
  const legs = first.legs.length;
  const suite = createSuite({ seed, gravity: MOON, terrain, legs, probeLength: 0, propellant: first.propellant });
  const readings = createReadings(legs);
  const estimate = createEstimate({
    gravity: MOON,
    map,
    feet: feetOf(first),
    start: firstGuess(trueFigures(first, terrain), START_SIGMA, seed),
    startSigma: START_SIGMA,
  });
  for (const state of truth) {
    readSensors(suite, state, faults, readings);
    if (state.tick > 0) stepEstimate(estimate, readings, judgmentsAt(state.tick));
    watch({ estimate, readings, suite, state });
  }
  return estimate;
}

/** Estimate less truth, in the order of the states that have a truth: motion, then biases. */
export function errorOf({ estimate, suite, state }: BelievedTick, terrain: Terrain): readonly number[] {
  const { x, height, vx, vy, angle } = trueFigures(state, terrain);
  return [x, height, vx, vy, angle, ...suite.scene.biases].map((value, i) => estimate.mean[i]! - value);
}
