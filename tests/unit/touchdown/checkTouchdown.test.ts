import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../engine/result.ts';
import { simulateTouchdown, type TouchdownCase, type TouchdownOptions } from '../../../engine/touchdown/index.ts';
import { MOON, plane } from '../../support/touchDown.ts';
import { ringLander } from '../../support/ringLander.ts';

const good: TouchdownCase = {
  lander: ringLander({
    mass: 2000,
    inertia: [2000, 2000, 2500],
    centerHeight: 1.5,
    legCount: 4,
    radius: 2,
    crushForce: 1e4,
  }),
  gravity: MOON,
  ground: plane(0.7),
  state: { horizontalSpeed: 0, descentRate: 1 },
};

function problems(changes: Partial<TouchdownCase>, options: TouchdownOptions = {}): readonly string[] {
  const result = simulateTouchdown({ ...good, ...changes }, options);
  return result.ok ? [] : result.error.map(formatProblem);
}

describe('[TD18] bad input', () => {
  it('is none in a plain case', () => {
    expect(problems({})).toEqual([]);
  });

  it.each([
    ['gravity', { gravity: Number.NaN }, 'gravity: expected a number from 0.001 to 1000 m/s², got NaN'],
    [
      'speed',
      { state: { horizontalSpeed: 3000, descentRate: 1 } },
      'state.horizontalSpeed: expected a number from -100 to 100 m/s, got 3000',
    ],
    [
      'rate',
      { state: { horizontalSpeed: 0, descentRate: 1, rates: [0, Infinity, 0] as const } },
      'state.rates[1]: expected a number from -10 to 10 rad/s, got Infinity',
    ],
    ['friction', { ground: plane(-0.1) }, 'ground.friction: expected a number from 0 to 10, got -0.1'],
    [
      'leg',
      { legs: [{ leg: 4, kind: 'missing' as const }] },
      'legs[0].leg: expected the index of a leg, 0 to 3, got 4',
    ],
    [
      'leg named twice',
      {
        legs: [
          { leg: 1, kind: 'missing' as const },
          { leg: 1, kind: 'soft' as const, factor: 0.5 },
        ],
      },
      'legs[1].leg: expected each leg named once, got 1 again',
    ],
    [
      'rock named twice under one leg',
      {
        ground: {
          ...plane(0.5),
          underPad: [
            { leg: 2, height: 0.1 },
            { leg: 2, height: 0.2 },
          ],
        },
      },
      'ground.underPad[1].leg: expected each leg named once, got 2 again',
    ],
    [
      'profile',
      {
        ground: {
          shape: { kind: 'profile' as const, terrain: { firstX: 0, spacing: 1, heights: [0], friction: 0 } },
          friction: 1,
        },
      },
      'ground.shape.terrain.heights: expected 2 to 1000000 finite heights, got 1 heights',
    ],
  ])('of %s names the field, what was expected and what it got', (_name, changes, message) => {
    expect(problems(changes)).toEqual([message]);
  });

  it('of options is refused too', () => {
    expect(problems({}, { step: 1 })).toEqual(['options.step: expected a number from 0.000001 to 0.01 s, got 1']);
    expect(problems({}, { historyEvery: 0.5 })).toHaveLength(1);
  });

  it('is a leg that the contact law cannot take', () => {
    const legs = good.lander.legs.map((leg, i) => (i === 2 ? { ...leg, bottomedStiffness: leg.stiffness / 2 } : leg));
    expect(problems({ lander: { ...good.lander, legs } })[0]).toContain('lander.legs[2].bottomedStiffness');
  });

  it('is a lander with all legs missing', () => {
    const legs = [0, 1, 2, 3].map((leg) => ({ leg, kind: 'missing' as const }));
    expect(problems({ legs })).toEqual(['legs: expected at least one leg left, got all missing']);
  });
});
