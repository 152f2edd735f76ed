import {
  createReadings,
  createSuite,
  readSensors,
  type Readings,
  type SensorSuite,
} from '../../engine/sensors/index.ts';
import type { Fault } from '../../engine/faults/index.ts';
import type { Terrain } from '../../engine/ground/index.ts';
import { groundHeight } from '../../engine/ground/index.ts';
import { TICK_DT, type DescentState, type LegState } from '../../engine/world/index.ts';
import { MOON } from './dropLander.ts';

/** Motion of a center of mass at a time: what a test states of a truth that nothing flies. */
export interface KinematicMotion {
  /** [m], [m/s] */
  readonly x: number;
  readonly y: number;
  readonly vx: number;
  readonly vy: number;
  /** [rad], [rad/s] */
  readonly angle: number;
  readonly rate: number;
}

/** Ground at height 0 everywhere. */
export const LEVEL: Terrain = {
  firstX: -500,
  spacing: 10,
  heights: Array.from({ length: 101 }, () => 0),
  friction: 0.7,
};

const LEGS = 4;
/** Feet lie this far below the center of mass and to its sides [m]. */
const BELOW = 2;
const ASIDE = 1.5;

/** A state of a lander with four legs that moves so; it burns, and has touched nothing. */
export function kinematicState(tick: number, motion: KinematicMotion, terrain: Terrain = LEVEL): DescentState {
  const legs = Array.from({ length: LEGS }, (_, leg) => footAt(motion, leg % 2 === 0 ? ASIDE : -ASIDE));
  return {
    ...motion,
    tick,
    phase: 'terminal descent',
    thrust: 3000,
    propellant: 100,
    mass: 2000,
    height: Math.min(...legs.map(({ footX, footY }) => footY - groundHeight(terrain, footX))),
    slope: 0,
    legs,
    commanded: { thrustPercent: 30, tiltDeg: 0 },
    contacts: [],
  };
}

function footAt({ x, y, angle }: KinematicMotion, across: number): LegState {
  return {
    footX: x + across * Math.cos(angle) + BELOW * Math.sin(angle),
    footY: y + across * Math.sin(angle) - BELOW * Math.cos(angle),
    footZ: 0,
    inContact: false,
    stroke: 0,
    strokeUsed: 0,
    usedUp: false,
    load: 0,
  };
}

/** Nothing moves, so far up [m]. */
export function still(y: number, angle = 0): KinematicMotion {
  return { x: 0, y, vx: 0, vy: 0, angle, rate: 0 };
}

/**
 * A lively descent over level ground, 40 s from 120 m down to some 40 m: it sways by 7 degrees and drifts either way. Place is the sum of velocities
 * as trapezoids, so that it belongs to them to the bit that a filter can tell.
 */
export function livelyDescent(ticks = 2400): readonly DescentState[] {
  const states: DescentState[] = [];
  let x = 0;
  let y = 120;
  let before = velocityAt(0);
  for (let tick = 0; tick <= ticks; tick++) {
    const time = tick * TICK_DT;
    const { vx, vy } = velocityAt(time);
    if (tick > 0) {
      x += ((vx + before.vx) / 2) * TICK_DT;
      y += ((vy + before.vy) / 2) * TICK_DT;
    }
    before = { vx, vy };
    const [angle, rate] = [0.12 * Math.sin(0.5 * time), 0.06 * Math.cos(0.5 * time)];
    states.push(kinematicState(tick, { x, y, vx, vy, angle, rate }));
  }
  return states;
}

function velocityAt(time: number): { readonly vx: number; readonly vy: number } {
  return { vx: 2 * Math.cos(0.3 * time), vy: -2 + 0.5 * Math.sin(0.7 * time) };
}

export function plainSuite(seed: number, terrain: Terrain = LEVEL): SensorSuite {
  return createSuite({ seed, gravity: MOON, terrain, legs: LEGS, probeLength: 0.5, propellant: 100 });
}

/** Reads all sensors over a truth, and hands each tick's readings to `watch`; they are overwritten after it. */
export function readOver(
  truth: readonly DescentState[],
  { seed, faults = [], terrain = LEVEL }: { seed: number; faults?: readonly Fault[]; terrain?: Terrain },
  watch: (readings: Readings, tick: number) => void,
): void {
  const suite = plainSuite(seed, terrain);
  const readings = createReadings(LEGS);
  for (const state of truth) {
    readSensors(suite, state, faults, readings);
    watch(readings, state.tick);
  }
}
