import { describe, expect, it } from 'vitest';
import type { BodyPoint } from '../../../engine/lander/lander.ts';
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import { drawConditions, MOON, plane, shippedLander, touchDown } from '../../support/touchDown.ts';
import { ringLander } from '../../support/ringLander.ts';

const IDS = ['trivet', 'steeple', 'bolster'] as const;

/** Largest rise of mechanical energy in undamped touchdowns, against the kinetic energy at the start. */
function rise(step: number): number {
  const random = seedRandom(42);
  let worst = 0;
  for (let run = 0; run < 20; run++) {
    const conditions = drawConditions(random);
    const { ledger } = touchDown(
      { lander: shippedLander('bolster'), ...conditions },
      { ledger: true, step, damping: 0, timeLimit: 2 },
    );
    worst = Math.max(worst, ledger!.largestRise / ledger!.kineticStart);
  }
  return worst;
}

/** Mean share of energy that the ledger does not account for. */
function missing(step: number): number {
  const random = seedRandom(43);
  let sum = 0;
  for (let run = 0; run < 30; run++) {
    const { ledger } = touchDown(
      { lander: shippedLander('trivet'), ...drawConditions(random) },
      { ledger: true, step, timeLimit: 2 },
    );
    const { kineticStart, gravityWork, kineticEnd, elasticEnd, crush, soil, friction, damping } = ledger!;
    const left = kineticStart + gravityWork - kineticEnd - elasticEnd - crush - soil - friction - damping;
    sum += Math.abs(left) / kineticStart;
  }
  return sum / 30;
}

/** A body whose legs never crush. */
const BOUNCER = {
  mass: 2000,
  inertia: [1500, 1500, 2500],
  centerHeight: 1,
  legCount: 4,
  radius: 2,
  crushForce: 1e9,
  stiffness: 1e6,
} as const;
/** Where the hull of such a body may touch, in plan [m]. */
const THREE_POINTS = [
  [1.2, 0],
  [-0.6, 1.04],
  [-0.6, -1.04],
] as const;

/** So many points in three rings far out. */
function hullOf(points: number): readonly BodyPoint[] {
  return Array.from({ length: points }, (_, i) => {
    const azimuth = (6 * Math.PI * i) / points;
    return [6 * Math.cos(azimuth), 6 * Math.sin(azimuth), 0.3 + 1.2 * Math.floor((3 * i) / points)];
  });
}

/** 40 random arrivals, undamped, on three hull points far below the feet and five above: largest gain and largest rise of energy. */
function tumble(step: number): { readonly appeared: number; readonly rise: number } {
  const below = THREE_POINTS.map(([x, y]): BodyPoint => [2.5 * x, 2.5 * y, -1.5]);
  const above = [
    [0, 0, 5],
    [3, 0, 4],
    [-3, 0, 4],
    [0, 3, 4],
    [0, -3, 4],
  ] as const satisfies readonly BodyPoint[];
  const lander = ringLander({ ...BOUNCER, hull: [...below, ...above] });
  const random = seedRandom(9);
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  let [appeared, rise] = [0, 0];
  for (let run = 0; run < 40; run++) {
    const state = {
      horizontalSpeed: between(-1, 1),
      descentRate: between(0.5, 2),
      pitch: between(-0.3, 0.3),
      roll: between(-0.3, 0.3),
      rates: [between(-0.2, 0.2), between(-0.2, 0.2), between(-0.2, 0.2)] as const,
    };
    const { clearance, ledger } = touchDown(
      { lander, gravity: MOON, ground: plane(between(0, 1)), state },
      { ledger: true, damping: 0, step, timeLimit: 6, stopWhenDecided: false },
    );
    expect(clearance).toBeLessThan(0);
    const { kineticStart, gravityWork, kineticEnd, elasticEnd, friction, damping, largestRise } = ledger!;
    const gain = kineticEnd + elasticEnd + friction + damping - kineticStart - gravityWork;
    appeared = Math.max(appeared, gain / kineticStart);
    rise = Math.max(rise, largestRise / kineticStart);
  }
  return { appeared, rise };
}

describe('energy', () => {
  // achieved: 1.4e-5 of the kinetic energy at the start over 480 other cases, 1.2e-7 in all but one of them
  it.each(IDS)(
    '[TD1] of %s never rises in a passive touchdown, hull contact, rocks, soil and tumbling included',
    (id) => {
      const random = seedRandom(41);
      const seen = new Set<string>();
      for (let run = 0; run < 30; run++) {
        const conditions = drawConditions(random);
        const result = touchDown(
          { lander: shippedLander(id), ...conditions },
          { ledger: true, stopWhenDecided: false, timeLimit: 5 },
        );
        const { kineticStart, largestRise } = result.ledger!;
        expect(kineticStart).toBeGreaterThan(0);
        expect(largestRise / kineticStart, JSON.stringify(conditions)).toBeLessThan(5e-5);
        for (const limit of result.limitsHit) seen.add(limit);
      }
      // the hard cases did occur
      expect([...seen]).toEqual(expect.arrayContaining(['crush exhausted', 'clearance']));
    },
  );

  it('[TD1] without any damping rises by no more than the second order of the step', () => {
    const coarse = rise(1 / 1024);
    // achieved: 8.5e-5
    expect(coarse).toBeLessThan(2e-4);
    expect(rise(1 / 4096)).toBeLessThan(coarse / 8);
  });

  it('[TD1] is all accounted for: what is missing shrinks in proportion to the step', () => {
    const coarse = missing(1 / 512);
    expect(coarse).toBeLessThan(0.02);
    expect(missing(1 / 2048)).toBeLessThan(coarse / 3);
  });

  it('[TD1] is all accounted for while thrust beside the center of mass pushes and turns the lander in flight', () => {
    const random = seedRandom(45);
    const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
    for (let run = 0; run < 10; run++) {
      const center = [between(-0.5, 0.5), between(-0.5, 0.5), 2] as const;
      const rates = [between(-0.2, 0.2), between(-0.2, 0.2), between(-0.2, 0.2)] as const;
      const { ledger } = touchDown(
        {
          lander: ringLander({ ...BOUNCER, inertia: [900, 1700, 2500], center }),
          gravity: MOON,
          ground: plane(1),
          thrust: { thrust: between(500, 2000), cutoffDelay: 9 },
          state: { horizontalSpeed: between(-1, 1), descentRate: 1, height: 20, rates },
        },
        { ledger: true, timeLimit: 2 },
      );
      const { kineticStart, gravityWork, thrustWork, kineticEnd } = ledger!;
      expect(Math.abs(thrustWork)).toBeGreaterThan(100);
      // the work of a step is by the mean of the power at its ends: second order
      expect(Math.abs(kineticStart + gravityWork + thrustWork - kineticEnd)).toBeLessThan(1e-6 * kineticEnd);
    }
  });

  it('[TD1] does not rise in the hardest arrivals either: over-damped, struts that yield sideways, a light body among many hull points', () => {
    const ring = { mass: 500, centerHeight: 2, legCount: 5, radius: 3, crushForce: 4000, stroke: 0.3 } as const;
    const spread = { force: 1500, stroke: 0.4, stiffness: 1.5e5 };
    const overDamped = ringLander({
      ...ring,
      inertia: [900, 900, 1200],
      stiffness: 2e5,
      bottomedStiffness: 8e5,
      hipInset: 1.2,
      secondary: spread,
    });
    const [light, bristling] = [36, 360].map((points) =>
      ringLander({ ...ring, inertia: [200, 200, 300], stiffness: 2e5, hull: hullOf(points) }),
    );
    const random = seedRandom(44);
    for (const [lander, damping] of [
      [overDamped, 2],
      [light!, 0.2],
      [bristling!, 0.2],
    ] as const) {
      let rise = 0;
      let unaccounted = 0;
      for (let run = 0; run < 12; run++) {
        const conditions = drawConditions(random);
        const state = { ...conditions.state, horizontalSpeed: 2 * run - 10, descentRate: 4 + run / 2 };
        const { ledger } = touchDown(
          { lander, ...conditions, state },
          { ledger: true, damping, timeLimit: 2, stopWhenDecided: false },
        );
        const { kineticStart, gravityWork, kineticEnd, elasticEnd, crush, soil, friction, damping: damped } = ledger!;
        const left = kineticStart + gravityWork - kineticEnd - elasticEnd - crush - soil - friction - damped;
        rise = Math.max(rise, ledger!.largestRise / kineticStart);
        unaccounted = Math.max(unaccounted, Math.abs(left) / kineticStart);
      }
      expect(rise).toBeLessThan(2e-4);
      expect(unaccounted).toBeLessThan(0.1);
    }
  });

  it.each([
    { on: 'its feet', hull: [] },
    // 0.6 m below the footpads
    { on: 'hull points', hull: THREE_POINTS.map(([x, y]): BodyPoint => [x, y, -0.6]) },
  ])(
    '[TD1] swings on between gravity and springs for a minute, on $on, without loss or gain when nothing can take it',
    ({ hull }) => {
      const lander = ringLander({ ...BOUNCER, hull });
      const result = touchDown(
        { lander, gravity: MOON, ground: plane(0), state: { horizontalSpeed: 0, descentRate: 0.5, height: 0.2 } },
        { ledger: true, damping: 0, timeLimit: 60, stopWhenDecided: false },
      );
      expect(result.clearance <= 0).toBe(hull.length > 0);
      const { kineticStart, gravityWork, kineticEnd, elasticEnd, largestRise } = result.ledger!;
      const energy = kineticStart + 2000 * MOON * 0.2;
      // achieved: 6e-5 on feet, 1.1e-4 on the hull after some fifty bounces; within a bounce the scheme swings by (omega h)^2 / 8
      expect(Math.abs(kineticEnd + elasticEnd - kineticStart - gravityWork) / energy).toBeLessThan(1e-3);
      expect(largestRise / energy).toBeLessThan(4e-3);
    },
  );

  it('[TD1] does not appear when an undamped body tumbles and slides on its hull points', () => {
    const [coarse, fine] = [1 / 512, 1 / 1024].map(tumble);
    // achieved: 4e-4 and 3.6e-3; a quarter of it in half the step. Without the correction of onset and release 7e-3 and 9e-3
    expect(coarse!.appeared).toBeLessThan(1e-3);
    expect(coarse!.rise).toBeLessThan(5e-3);
    expect(fine!.rise).toBeLessThan(coarse!.rise / 3);
  });
});
