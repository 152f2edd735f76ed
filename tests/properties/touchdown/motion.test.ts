import { describe, expect, it } from 'vitest';
import { rotate, rotateBack } from '../../../engine/math/quaternion.ts';
import type { Lander } from '../../../engine/lander/lander.ts';
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import {
  prepareTouchdown,
  runTouchdown,
  type TouchdownConditions,
  type TouchdownKernel,
  type TouchdownSample,
} from '../../../engine/touchdown/index.ts';
import { drawConditions, MOON, plane, shippedLander, touchDown } from '../../support/touchDown.ts';
import { ringLander } from '../../support/ringLander.ts';

const inertia = [900, 1700, 2300] as const;

/** Twice the kinetic energy of rotation [J]. */
function tumbling({ rates }: TouchdownSample): number {
  return rates.reduce((sum, rate, i) => sum + inertia[i]! * rate ** 2, 0);
}

describe('free flight', () => {
  const lander = ringLander({ mass: 1500, inertia, centerHeight: 1, legCount: 3, radius: 2, crushForce: 1e4 });
  const result = touchDown(
    {
      lander,
      gravity: MOON,
      ground: plane(0.5, 0.1),
      state: { horizontalSpeed: 3, descentRate: -2, height: 20, rates: [0.4, -0.3, 0.5], yaw: 1, pitch: 0.3 },
    },
    { historyEvery: 1 },
  );
  const flight = result.history!.filter((sample) => sample.time < result.firstContact);
  const momentum = ({ attitude, rates }: TouchdownSample): readonly number[] =>
    rotate(attitude, [inertia[0] * rates[0], inertia[1] * rates[1], inertia[2] * rates[2]]);

  it('[TD2] lasts seconds here, tumbling', () => {
    expect(flight.length).toBeGreaterThan(20);
    expect(flight.at(-1)!.time).toBeGreaterThan(5);
  });

  it('[TD2] keeps angular momentum to rounding', () => {
    const start = momentum(flight[0]!);
    const end = momentum(flight.at(-1)!);
    for (const i of [0, 1, 2]) expect(Math.abs(end[i]! - start[i]!)).toBeLessThan(1e-9);
  });

  it('[TD2] keeps the kinetic energy of the tumbling to the order of the turn of a step', () => {
    // achieved 2e-5; a step of free flight turns by at most 1/64 rad
    expect(Math.abs(tumbling(flight.at(-1)!) / tumbling(flight[0]!) - 1)).toBeLessThan(1e-4);
  });

  it('[TD2] moves the center of mass on its parabola to rounding', () => {
    const [start, end] = [flight[0]!, flight.at(-1)!];
    const t = end.time;
    for (const i of [0, 1, 2] as const) {
      const fall = i === 2 ? -MOON : 0;
      expect(Math.abs(end.position[i] - (start.position[i] + start.velocity[i] * t + (fall * t * t) / 2))).toBeLessThan(
        1e-9,
      );
      expect(Math.abs(end.velocity[i] - (start.velocity[i] + fall * t))).toBeLessThan(1e-10);
    }
  });

  it('[TD2] turns a symmetric body steadily: attitude and rates as the closed form says', () => {
    // I1 = I2: the axis of symmetry turns about L at L / I1; here spin only about that axis and one across
    const top = ringLander({
      mass: 1500,
      inertia: [1200, 1200, 2000],
      centerHeight: 1,
      legCount: 3,
      radius: 2,
      crushForce: 1e4,
    });
    const [across, along] = [0.3, 0.4];
    const spun = touchDown(
      {
        lander: top,
        gravity: MOON,
        ground: plane(0.5),
        state: { horizontalSpeed: 0, descentRate: 0, height: 20, rates: [across, 0, along] },
      },
      { step: 1 / 1024, historyEvery: 1 },
    );
    const end = spun.history!.findLast((sample) => sample.time < spun.firstContact)!;
    // Euler: the rate across turns in the body at (I3 - I1) / I1 x along
    const turn = ((2000 - 1200) / 1200) * along * end.time;
    // achieved 1e-4
    expect(Math.abs(end.rates[0] - across * Math.cos(turn))).toBeLessThan(3e-4);
    expect(Math.abs(end.rates[1] - across * Math.sin(turn))).toBeLessThan(3e-4);
    expect(Math.abs(end.rates[2] - along)).toBeLessThan(1e-5);
    const fixed = rotateBack(end.attitude, [1200 * across, 0, 2000 * along]);
    expect(Math.abs(fixed[2] - 2000 * end.rates[2])).toBeLessThan(1e-9);
  });
});

describe('free flight without a turn', () => {
  it('[TD2] takes a handful of steps, from however high it falls', () => {
    const lander = ringLander({ mass: 1500, inertia, centerHeight: 1, legCount: 3, radius: 2, crushForce: 1e4 });
    for (const height of [5, 50, 500]) {
      const state = { horizontalSpeed: 1, descentRate: 1, height };
      // up to a hundredth of its time before contact
      const timeLimit = (0.99 * (Math.sqrt(1 + 2 * MOON * height) - 1)) / MOON;
      const { steps } = touchDown({ lander, gravity: MOON, ground: plane(1), state }, { timeLimit });
      expect(steps).toBeLessThan(10);
    }
  });
});

describe('determinism of a run', () => {
  it('[TD19] gives the same bits from a used kernel, from a new one, and with history kept', () => {
    const random = seedRandom(7);
    for (const id of ['trivet', 'bolster'] as const) {
      for (let run = 0; run < 10; run++) {
        const touchdown = { lander: shippedLander(id), ...drawConditions(random) };
        const first = touchDown(touchdown);
        const { history, ...second } = touchDown(touchdown, { historyEvery: 7 });
        expect(second).toEqual(first);
        expect(history!.length).toBeGreaterThan(2);
      }
    }
  });

  it('[TD19] gives them after any other run too: a kernel forgets legs that were there, walls and thrust', () => {
    const random = seedRandom(46);
    const legCount = 6;
    const lander = ringLander({
      mass: 2000,
      inertia: [1500, 1500, 2500],
      centerHeight: 1,
      legCount,
      radius: 2,
      crushForce: 6000,
    });
    const used = kernelOf(lander);
    for (let run = 0; run < 40; run++) {
      // every other run is left with feet on a bank of 2 to 1, where they cannot hold; between them one leg is missing on level ground
      const from = 5 * nextUniform(random) - 2;
      const heights = Array.from({ length: 81 }, (_, i) => (run % 2 === 0 ? Math.max(0, 2 * (i / 2 - 20 - from)) : 0));
      const shape = { kind: 'profile', terrain: { firstX: -20, spacing: 0.5, heights, friction: 0 } } as const;
      const conditions: TouchdownConditions = {
        gravity: MOON,
        ground: { shape, friction: 0.8 },
        legs: run % 2 === 0 ? [] : [{ leg: Math.floor(legCount * nextUniform(random)), kind: 'missing' }],
        ...(run % 3 === 0 && { thrust: { thrust: 1000 } }),
        state: { ...drawConditions(random).state, height: 0 },
      };
      const options = { only: 'tipping', ...(run % 2 === 0 && { timeLimit: 0.2 }) } as const;
      const again = runTouchdown(used, conditions, options);
      expect(again, `run ${run}`).toEqual(runTouchdown(kernelOf(lander), conditions, options));
    }
  });
});

function kernelOf(lander: Lander): TouchdownKernel {
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  return prepared.value;
}
