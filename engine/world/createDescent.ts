import { assert } from '../assert.ts';
import { lagStep } from '../descent/thrust.ts';
import { legConditionsAt } from '../faults/legConditions.ts';
import { soilOf } from '../ground/terrain.ts';
import { preparePlanarFeet, weighFeet, type PlanarFeet } from '../touchdown/planarFeet.ts';
import type { LegCondition } from '../touchdown/touchdownCase.ts';
import { MAX_SPEED, PHYSICS_DT } from './constants.ts';
import { OPEN_VALVES, type DescentSetup } from './descent.ts';
import type { ContactHistory, Descent } from './descentRecord.ts';
import { headingAt } from './facings.ts';
import { createHullBody } from './hullBody.ts';
import { readMassTable } from './massTable.ts';
import { isFiniteMotion, type Bulk } from './motion.ts';
import { layOutSection } from './layOutSection.ts';
import type { SectionLander } from './sectionLander.ts';
import { APPROACH_ENDS, FOOT_CLEAR_TICKS } from './thresholds.ts';
import { lowestFoot } from './feet.ts';

/** A descent at its start. Bodies are created in a fixed order, and none later. */
export function createDescent(setup: DescentSetup): Descent {
  checkSetup(setup);
  const { facing } = setup;
  const section = layOutSection(setup.lander, setup.propellant, facing);
  const bulk: Bulk = { mass: 0, centerHeight: 0, inertia: 0 };
  readMassTable(section.masses, setup.propellant, bulk);
  const legs = legConditionsAt(setup.faults ?? [], 0);
  const feet = layOutFeet(setup, section, legs);
  weighFeet(feet, bulk.mass, bulk.centerHeight);
  const motion = { ...setup.start };
  const descent: Descent = {
    setup,
    section,
    heading: facing === undefined ? undefined : headingAt(section.facings, facing),
    hull: createHullBody(setup.terrain, section.hull, bulk, motion),
    lag: lagStep(setup.lander.engine.lag, PHYSICS_DT),
    faults: setup.faults ?? [],
    tick: 0,
    phase: 'approach',
    motion,
    before: { ...motion },
    stepStart: { ...motion },
    bulk,
    forces: { gravity: setup.gravity, thrust: 0, torque: 0 },
    thrust: 0,
    propellant: setup.propellant,
    commanded: { thrustPercent: 0, tiltDeg: 0 },
    valves: OPEN_VALVES,
    feet,
    legs,
    legsAwake: false,
    contact: createContactHistory(feet.count),
    events: [],
    arrivals: [],
    touchdown: undefined,
    outcome: undefined,
  };
  const height = lowestFoot(descent);
  assert(height > 0, `the start must hold all feet above the ground, the lowest stands at ${height} m`);
  if (height <= APPROACH_ENDS) descent.phase = 'terminal descent';
  return descent;
}

/** Feet with legs that hang free, in the condition in which they are. */
export function layOutFeet(
  { lander, terrain, gravity }: DescentSetup,
  { azimuth, masses }: SectionLander,
  legs: readonly LegCondition[],
): PlanarFeet {
  const ground = { shape: { kind: 'profile', terrain }, friction: terrain.friction, ...soilOf(terrain) } as const;
  const { leastMass } = masses;
  return preparePlanarFeet({ lander, leastMass, azimuth, ground, gravity, legs, interval: PHYSICS_DT });
}

function createContactHistory(legs: number): ContactHistory {
  return {
    clear: Array.from({ length: legs }, () => FOOT_CLEAR_TICKS),
    touched: Array.from({ length: legs }, () => false),
    stages: Array.from({ length: legs }, () => 0),
    offGround: FOOT_CLEAR_TICKS,
    burned: false,
    hullDown: false,
    firstTick: -1,
    bothDown: false,
    stillTicks: 0,
    ranDry: false,
    crashTick: -1,
    lyingSince: -1,
    pastBalance: 0,
  };
}

function checkSetup(setup: DescentSetup): void {
  const { gravity, terrain, start, propellant, facing = 0 } = setup;
  assert(gravity > 0 && gravity < 100, `gravity is above 0 and below 100 m/s², got ${gravity}`);
  assert(propellant >= 0 && propellant < Infinity, `propellant is 0 kg or more, got ${propellant}`);
  assert(terrain.spacing >= 0.1 && terrain.spacing <= 10, `spacing is 0.1 to 10 m, got ${terrain.spacing}`);
  assert(terrain.heights.length >= 2, 'the ground has at least two heights');
  assert(terrain.heights.every(Number.isFinite) && Number.isFinite(terrain.firstX), 'the ground is finite');
  assert(terrain.friction >= 0 && terrain.friction < 10, `friction is 0 or more, got ${terrain.friction}`);
  assert(isFiniteMotion(start), 'the start is finite');
  assert(Number.isInteger(facing), `facing is a whole number of edges, got ${facing}`);
  const speed = Math.sqrt(start.vx * start.vx + start.vy * start.vy);
  assert(speed < MAX_SPEED / 4, `the start is slower than ${MAX_SPEED / 4} m/s, got ${speed}`);
}
