import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groundHeight } from '../../../engine/ground/index.ts';
import { massProperties } from '../../../engine/lander/index.ts';
import { hashValue } from '../../../engine/math/hashValue.ts';
import { createDescent, readDescent } from '../../../engine/world/index.ts';
import { findWorld, WORLDS } from '../../../engine/worlds.ts';
import { findStart, LANDERS, layPlan, parsePlanChoice, worldsFor } from '../../../levels/index.ts';
import { flyableChoice } from '../../support/flyableChoice.ts';
import { choiceOf } from '../../support/planChoice.ts';

const PARAMETERS = { seed: 26_1130, numRuns: 150 };

describe('a choice that can be flown', () => {
  it('[LE7] is laid out, over a trip through text too, and the same to the bit each time', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(flyableChoice, (choice) => {
        const plan = layPlan(choice);
        const read = parsePlanChoice(JSON.parse(JSON.stringify(choice)));
        if (!plan.ok || !read.ok) throw new Error(JSON.stringify([plan, read]));
        const again = layPlan(read.value);
        if (!again.ok) throw new Error(JSON.stringify(again));
        expect(hashValue(again.value.setup)).toBe(hashValue(plan.value.setup));
        expect(again.value).toEqual(plan.value);
        expect(plan.value.choice).toEqual(choice);
        seen.add(`${choice.lander} ${choice.site} ${choice.start}`);
      }),
      PARAMETERS,
    );
    // most of the 60 ways
    expect(seen.size).toBeGreaterThan(35);
  });

  it('[LE8] begins with the feet as high as its start says, at that drift and descent rate, upright and at rest about itself', () => {
    fc.assert(
      fc.property(flyableChoice, (choice) => {
        const plan = layPlan(choice);
        const start = findStart(choice.start)!;
        if (!plan.ok) throw new Error(JSON.stringify(plan));
        const { setup } = plan.value;
        const state = readDescent(createDescent(setup));
        // the feet stand over the highest ground under the lander or lower ground
        expect(state.height).toBeGreaterThanOrEqual(start.height - 1e-9);
        expect(state.height).toBeLessThan(start.height + 2.5);
        expect(setup.start).toMatchObject({ vx: start.drift, vy: -start.descentRate, angle: 0, rate: 0 });
        const above = setup.start.y - groundHeight(setup.terrain, setup.start.x);
        expect(above).toBeGreaterThanOrEqual(start.height + massProperties(setup.lander).center[2] - 1e-9);
        expect(setup.gravity).toBe(findWorld(choice.world)!.gravity);
        expect(setup.propellant).toBeGreaterThan(0);
      }),
      PARAMETERS,
    );
  });
});

describe('a choice that cannot be flown', () => {
  const beyond = LANDERS.flatMap((lander) =>
    WORLDS.filter((world) => !worldsFor(lander).includes(world)).map((world) => ({ lander, world })),
  );

  it.each(beyond)(
    '[LE9] is refused with the worlds that would do: $lander.name on $world.name',
    ({ lander, world }) => {
      const plan = layPlan(choiceOf({ lander: lander.id, world: world.id }));
      if (plan.ok) throw new Error('it was laid out');
      const [problem] = plan.error;
      expect(plan.error).toHaveLength(1);
      expect(problem?.path).toBe('world');
      expect(problem?.came).toContain(world.name);
      for (const { name } of worldsFor(lander)) expect(problem?.expected).toContain(name);
      expect(problem?.expected).not.toContain(world.name);
    },
  );

  it('[LE9] is one whose engine gives under 1.25 times the weight, cannot come down at its least burn, or has thick air', () => {
    const flown = Object.fromEntries(LANDERS.map((lander) => [lander.id, worldsFor(lander).map(({ id }) => id)]));
    // gravity by hand: Trivet weighs 2019 kg full and burns 960 to 9600 N, so 9600 / (2019 · 1.25) = 3.80 m/s² and 960 / (1510 · 0.8) = 0.79 m/s²
    expect(flown['trivet']).toEqual(['moon', 'mars', 'mercury', 'io', 'europa', 'ganymede', 'callisto']);
    // Bolster: 28000 / (6574 · 1.25) = 3.41 m/s², below Mars and Mercury; 2800 / (4860 · 0.8) = 0.72 m/s², below Triton
    expect(flown['bolster']).toEqual(['moon', 'io', 'europa', 'ganymede', 'callisto', 'triton']);
    expect(beyond.map(({ world }) => world.id)).toContain('titan');
  });
});
