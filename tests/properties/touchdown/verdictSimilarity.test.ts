import { describe, expect, it } from 'vitest';
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import type { TouchdownCase } from '../../../engine/touchdown/index.ts';
import { ringLander } from '../../support/ringLander.ts';
import { MOON, plane, touchDown } from '../../support/touchDown.ts';

const HULL = [
  [1, 0, 0.7],
  [-0.5, 0.9, 0.7],
  [-0.5, -0.9, 0.7],
  [0.6, 0, 3],
  [-0.6, 0, 3],
] as const;

interface Arrival {
  readonly legCount: number;
  readonly slope: number;
  readonly friction: number;
  readonly speed: number;
  readonly descentRate: number;
  readonly yaw: number;
}

function drawArrival(random: ReturnType<typeof seedRandom>): Arrival {
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  return {
    legCount: 3 + Math.floor(between(0, 3)),
    slope: between(0, 0.2),
    friction: between(0.2, 1.2),
    speed: between(0, 3),
    descentRate: between(0.3, 4),
    yaw: between(0, 6),
  };
}

/** Lengths x k at the same gravity and mass: stiffness x 1/k, inertia x k², speeds and times x sqrt(k). */
function scaled({ legCount, slope, friction, speed, descentRate, yaw }: Arrival, k: number): TouchdownCase {
  const lander = ringLander({
    mass: 2000,
    inertia: [2500 * k * k, 2500 * k * k, 2000 * k * k],
    centerHeight: 1.6 * k,
    legCount,
    radius: 1.8 * k,
    crushForce: 9000,
    stroke: 0.3 * k,
    stiffness: 1e6 / k,
    bottomedStiffness: 3e6 / k,
    hipInset: 0.5 * k,
    hipHeight: 1.2 * k,
    hull: HULL.map(([x, y, z]) => [x * k, y * k, z * k] as const),
  });
  const pace = Math.sqrt(k);
  return {
    lander,
    gravity: MOON,
    ground: plane(friction, slope),
    state: { horizontalSpeed: speed * pace, descentRate: descentRate * pace, yaw, pitch: slope / 2 },
  };
}

function verdictOf(arrival: Arrival, k: number) {
  const pace = Math.sqrt(k);
  const options = { step: pace / 1024 };
  const result = touchDown(scaled(arrival, k), options);
  const { outcome, stillRocking, limitsHit, steps } = result;
  // asked for tipping alone it ends as soon as it has not the energy to tip
  const short = touchDown(scaled(arrival, k), { ...options, only: 'tipping' });
  const time = Math.round((result.time / pace) * 1e6);
  return { outcome, stillRocking, limitsHit, steps, time, short: [short.outcome, short.steps] };
}

describe('a verdict', () => {
  it('[TD8] falls at the same moment, and the same, on landers of any size', () => {
    const random = seedRandom(14);
    const seen = new Set<string>();
    for (let i = 0; i < 24; i++) {
      const arrival = drawArrival(random);
      const verdict = verdictOf(arrival, 1);
      // powers of four scale every number by powers of two, which rounds nothing
      for (const k of [1 / 64, 64]) expect(verdictOf(arrival, k), JSON.stringify(arrival)).toEqual(verdict);
      seen.add(verdict.outcome);
    }
    expect([...seen]).toEqual(expect.arrayContaining(['upright', 'overloaded', 'tipped downhill']));
  });
});
