import { pilot, STEADY } from '../../engine/descent/index.ts';
import { createDescent, readDescent, stepDescent, STEPS_PER_TICK, type Outcome } from '../../engine/world/index.ts';
import { PHYSICS_DT, POSITION_ITERATIONS, VELOCITY_ITERATIONS } from '../../engine/world/constants.ts';
import type { Descent } from '../../engine/world/descentRecord.ts';
import { createHullBody, isHullDown, layGround } from '../../engine/world/hullBody.ts';
import { findLander, firstLanding } from '../../levels/index.ts';
import { COAST, dropLander, evenGround, MOON } from '../support/dropLander.ts';
import type { BenchRow } from './row.ts';

const SEED = 7;
const FLIGHT_TICKS = 600;
const DROPS = 40;
const WARM_UP = 3;

interface Touchdown {
  readonly vx: number;
  readonly descentRate: number;
  /** Of the ground; above the stance over the height it cannot slide away from a fall [-]. */
  readonly friction: number;
  readonly outcome: Outcome;
}

const UPRIGHT: Touchdown = { vx: 0.5, descentRate: 2, friction: 0.7, outcome: 'upright' };
const TIPPING: Touchdown = { vx: 3, descentRate: 0.5, friction: 1.5, outcome: 'tipped downhill' };

/** Cost of one physics step of the played world, against the rigid-body library alone stepping the same bodies. */
export function benchWorldStep(): readonly BenchRow[] {
  const lying = best(bareContactStep);
  const onTheGround = { unit: 'us', reference: 'bare planck step, same hull lying on the same ground' };
  return [
    {
      measure: 'world step in flight',
      value: best(flightStep),
      unit: 'us',
      reference: 'bare planck step, same hull in free flight',
      referenceValue: best(bareFlightStep),
    },
    {
      ...onTheGround,
      measure: 'world step on crushing legs, to rest',
      value: best(() => contactStep(UPRIGHT)),
      referenceValue: lying,
    },
    {
      ...onTheGround,
      measure: 'world step through a fall onto the hull, to rest',
      value: best(() => contactStep(TIPPING)),
      referenceValue: lying,
    },
  ];
}

/** Time of one step [us]: the best of several runs, after some that warm up. */
function best(run: () => number): number {
  for (let i = 0; i < WARM_UP; i++) run();
  return Math.min(...Array.from({ length: 5 }, run));
}

/** The first ten seconds of the first landing, flown by the scripted pilot; only the steps are timed. */
function flightStep(): number {
  const { setup } = firstLanding(SEED);
  const craft = { engine: setup.lander.engine, gravity: setup.gravity };
  const descent = createDescent(setup);
  let spent = 0;
  for (let tick = 0; tick < FLIGHT_TICKS; tick++) {
    const input = pilot(STEADY, craft, readDescent(descent));
    const begun = performance.now();
    stepDescent(descent, input);
    spent += performance.now() - begun;
  }
  if (descent.touchdown !== undefined) throw new Error('The flight of the bench must not touch down.');
  return (1000 * spent) / (FLIGHT_TICKS * STEPS_PER_TICK);
}

function contactStep(touchdown: Touchdown): number {
  let steps = 0;
  let spent = 0;
  for (let drop = 0; drop < DROPS; drop++) {
    const descent = dropTrivet(touchdown);
    const begun = performance.now();
    while (descent.outcome === undefined) stepDescent(descent, COAST);
    spent += performance.now() - begun;
    steps += descent.tick * STEPS_PER_TICK;
    if (descent.outcome !== touchdown.outcome)
      throw new Error(`A drop of the bench ended '${descent.outcome}', expected '${touchdown.outcome}'.`);
  }
  return (1000 * spent) / steps;
}

function bareFlightStep(): number {
  const { hull } = dropTrivet(UPRIGHT);
  return timeBare(() => {
    hull.world.step(PHYSICS_DT, VELOCITY_ITERATIONS, POSITION_ITERATIONS);
  });
}

/** The hull of the lander, with its mass, dropped flat and left lying on the chain: the library has contacts to solve. */
function bareContactStep(): number {
  const { section, bulk } = dropTrivet(UPRIGHT);
  const terrain = evenGround();
  const lowest = Math.min(...section.hull.map(([, y]) => y));
  const motion = { x: 0, y: bulk.centerHeight - lowest + 0.02, angle: 0, vx: 0, vy: 0, rate: 0 };
  const hull = createHullBody(terrain, section.hull, bulk, motion);
  const { world } = hull;
  layGround(hull, terrain, 0, motion.y);
  world.setGravity({ x: 0, y: -MOON });
  const step = (): void => {
    world.step(PHYSICS_DT, VELOCITY_ITERATIONS, POSITION_ITERATIONS);
  };
  for (let i = 0; i < 480; i++) step();
  if (!isHullDown(hull)) throw new Error('The hull of the bench must lie on the ground.');
  return timeBare(step);
}

function timeBare(step: () => void): number {
  const steps = 20_000;
  const begun = performance.now();
  for (let i = 0; i < steps; i++) step();
  return (1000 * (performance.now() - begun)) / steps;
}

function dropTrivet({ vx, descentRate, friction }: Touchdown): Descent {
  const lander = findLander('trivet');
  if (lander === undefined) throw new Error('The bench needs Trivet.');
  return dropLander({ lander, descentRate, vx, terrain: evenGround(0, friction) });
}
