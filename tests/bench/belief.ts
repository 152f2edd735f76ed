import { pilot, STEADY } from '../../engine/descent/index.ts';
import {
  createEstimate,
  drawMap,
  feetOf,
  firstGuess,
  ORBITAL_SURVEY,
  START_SIGMA,
  stepEstimate,
  trueFigures,
} from '../../engine/estimate/index.ts';
import { createReadings, createSuite, readSensors } from '../../engine/sensors/index.ts';
import { createDescent, readDescent, stepDescent } from '../../engine/world/index.ts';
import { firstLanding } from '../../levels/index.ts';
import type { BenchRow } from './row.ts';

const SEED = 7;
const FLIGHT_TICKS = 600;
const RUNS = 12;

interface Spent {
  /** [ms] */
  readonly world: number;
  readonly sensors: number;
  readonly estimate: number;
}

/** What a tick of all sensors and of the estimate costs, against the tick of the played world that they follow, in free flight. */
export function benchBelief(): readonly BenchRow[] {
  const runs = Array.from({ length: RUNS }, flyBelieving).slice(RUNS / 3);
  const least = (pick: (spent: Spent) => number): number => (1000 * Math.min(...runs.map(pick))) / FLIGHT_TICKS;
  const reference = {
    unit: 'us',
    reference: 'a tick of the played world in the same flight',
    referenceValue: least(({ world }) => world),
  };
  return [
    { measure: 'all sensors, a tick in flight', value: least(({ sensors }) => sensors), ...reference },
    { measure: 'the estimate, a tick in flight', value: least(({ estimate }) => estimate), ...reference },
    {
      measure: 'sensors and estimate together',
      value: least(({ sensors, estimate }) => sensors + estimate),
      ...reference,
    },
  ];
}

function flyBelieving(): Spent {
  const { setup } = firstLanding(SEED);
  const { lander, terrain, gravity, propellant } = setup;
  const craft = { engine: lander.engine, gravity };
  const descent = createDescent(setup);
  let truth = readDescent(descent);
  const legs = lander.legs.length;
  const suite = createSuite({ seed: SEED, gravity, terrain, legs, probeLength: lander.probeLength, propellant });
  const readings = createReadings(legs);
  const estimate = createEstimate({
    gravity,
    map: drawMap(terrain, SEED, ORBITAL_SURVEY),
    feet: feetOf(truth),
    start: firstGuess(trueFigures(truth, terrain), START_SIGMA, SEED),
    startSigma: START_SIGMA,
  });
  readSensors(suite, truth, [], readings);
  const spent = { world: 0, sensors: 0, estimate: 0 };
  for (let tick = 0; tick < FLIGHT_TICKS; tick++) {
    const input = pilot(STEADY, craft, truth);
    const begun = performance.now();
    stepDescent(descent, input);
    const stepped = performance.now();
    truth = readDescent(descent);
    const read = performance.now();
    readSensors(suite, truth, [], readings);
    const sensed = performance.now();
    stepEstimate(estimate, readings, {});
    const believed = performance.now();
    spent.world += stepped - begun;
    spent.sensors += sensed - read;
    spent.estimate += believed - sensed;
  }
  if (descent.touchdown !== undefined) throw new Error('The flight of the bench must not touch down.');
  return spent;
}
