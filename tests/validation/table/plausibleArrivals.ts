import { drainTanks, massRange } from '../../../engine/lander/drainTanks.ts';
import type { Lander } from '../../../engine/lander/index.ts';
import { nextUniform, type RandomState } from '../../../engine/math/random.ts';
import { arrivalCase, playedModel, type PredictedMargin, type TablePlan } from '../../../engine/table/index.ts';
import type { TouchdownConditions, TouchdownKernel } from '../../../engine/touchdown/index.ts';
import { prepareTouchdown } from '../../../engine/touchdown/index.ts';
import type { DescentState, TouchdownState } from '../../../engine/world/index.ts';
import { findLimits } from '../../../levels/index.ts';
import { evenGround, MOON } from '../../support/dropLander.ts';
import { plainChoice } from '../../support/plainChoice.ts';

const DEGREE = Math.PI / 180;

/** How long before the contact the live margin is read [s]. */
const BEFORE = 3;

/**
 * The plausible arrivals over which the bands are counted, each from an even distribution: 0 to 3 m/s across, 0.5 to 2.5 m/s down, ground that falls
 * 0 to 10 deg along the travel or against it at even odds, lean to 4 deg and turn to 3 deg/s either way, friction 0.4 to 1.1, propellant from none to
 * all. The live margin is read 3 s before, off the contact that comes by up to 0.2 m/s down and 1 deg of lean, and not knowing the turn at all.
 */
export interface PlausibleArrival {
  readonly conditions: TouchdownConditions;
  readonly kernel: TouchdownKernel;
  /** Across, at the contact [m/s]. */
  readonly speed: number;
  /** What the crew read; undefined where there was no number. */
  readonly read: PredictedMargin | undefined;
}

/** Arrivals of one lander on the Moon, drawn anew at each call. */
export function arrivalDrawer(lander: Lander, random: RandomState): () => PlausibleArrival {
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  const { empty, full } = massRange(lander);
  const limits = findLimits(lander.id, 'moon');
  if (limits === undefined) throw new Error(`no limits of ${lander.id}`);
  return () => {
    const mass = between(empty, full);
    const slope = between(0, 10) * DEGREE * (nextUniform(random) < 0.5 ? -1 : 1);
    const terrain = evenGround(slope, between(0.4, 1.1));
    const arrival: TouchdownState = {
      tick: 0,
      x: 0,
      vx: between(0, 3),
      descentRate: between(0.5, 2.5),
      angle: between(-4, 4) * DEGREE,
      rate: between(-3, 3) * DEGREE,
      slope,
      mass,
      firstFoot: 'both',
    };
    const setup = {
      lander,
      gravity: MOON,
      terrain,
      propellant: full - empty,
      start: { x: 0, y: 0, angle: 0, vx: 0, vy: 0, rate: 0 },
    };
    const descentRate = Math.max(0.1, arrival.descentRate + between(-0.2, 0.2));
    const angle = arrival.angle + between(-1, 1) * DEGREE;
    const names = { title: '', landerId: lander.id, siteId: '', worldId: 'moon', seed: 0, choice: plainChoice };
    const plan: TablePlan = { ...names, setup, limits };
    const { predicted } = playedModel.createMarginGauge(plan)(onTheWay({ ...arrival, descentRate, angle }));
    const prepared = prepareTouchdown(drainTanks(lander, mass));
    if (!prepared.ok) throw new Error(`${lander.id} does not lend itself to simulation`);
    return { conditions: arrivalCase(setup, arrival), kernel: prepared.value, speed: arrival.vx, read: predicted };
  };
}

/** A point of a lander BEFORE the contact, moving as predicted. */
function onTheWay({ vx, descentRate, angle, mass }: TouchdownState): DescentState {
  const [x, y] = [-vx * BEFORE, descentRate * BEFORE];
  const foot = { footX: x, footY: y, footZ: 0, inContact: false, stroke: 0, strokeUsed: 0, usedUp: false, load: 0 };
  return {
    tick: 0,
    phase: 'terminal descent',
    x,
    y,
    vx,
    vy: -descentRate,
    angle,
    rate: 0,
    thrust: 0,
    propellant: 0,
    mass,
    height: y,
    slope: 0,
    legs: [foot],
    contacts: [],
    commanded: { thrustPercent: 0, tiltDeg: Math.round(angle / DEGREE) },
  };
}
