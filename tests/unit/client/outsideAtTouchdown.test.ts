import { describe, expect, it } from 'vitest';
import { outsideAtTouchdown, outsideInSimulation } from '../../../client/panels/outsideAtTouchdown.ts';
import type { DescentSetup, TouchdownState } from '../../../engine/world/index.ts';
import { WORLDS } from '../../../engine/worlds.ts';
import { findLander } from '../../../levels/index.ts';
import { ringLander } from '../../support/ringLander.ts';
import { PLAIN_TOUCHDOWN } from '../../support/plainTouchdown.ts';
import { plainPlan } from '../../support/plainTable.ts';

function setupOf(change: Partial<DescentSetup> = {}): DescentSetup {
  const trivet = findLander('trivet');
  if (trivet === undefined) throw new Error('This test needs Trivet.');
  return {
    lander: trivet,
    gravity: 1.62422,
    terrain: { firstX: -100, spacing: 100, heights: [0, 0, 0], friction: 0.8 },
    start: { x: 0, y: 100, angle: 0, vx: 0, vy: 0, rate: 0 },
    propellant: 100,
    ...change,
  };
}

const WIDE = ringLander({
  mass: 1000,
  inertia: [1500, 1500, 1500],
  centerHeight: 1,
  legCount: 4,
  radius: 5,
  crushForce: 10_000,
});

describe('what the scorecard says of the checked range', () => {
  it('[CK7] is nothing for an ordinary touchdown on the Moon', () => {
    expect(outsideAtTouchdown(setupOf(), PLAIN_TOUCHDOWN)).toEqual([]);
  });

  it.each<[string, DescentSetup, TouchdownState]>([
    ['gravity 0.3 m/s^2', setupOf({ gravity: 0.3 }), PLAIN_TOUCHDOWN],
    ['slope 20 deg', setupOf(), { ...PLAIN_TOUCHDOWN, slope: (-20 * Math.PI) / 180 }],
    ['descent rate 6 m/s', setupOf(), { ...PLAIN_TOUCHDOWN, descentRate: 6 }],
    ['body rate 40 deg/s', setupOf(), { ...PLAIN_TOUCHDOWN, rate: (-40 * Math.PI) / 180 }],
    ['half stance over height 3.536', setupOf({ lander: WIDE, propellant: 0 }), { ...PLAIN_TOUCHDOWN, mass: 1000 }],
  ])('[CK7] names %s', (words, setup, touchdown) => {
    const lines = outsideAtTouchdown(setup, touchdown);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain(`${words}, checked from`);
  });

  it('[CK8] is more for the simulation, which meets the ground of the site', () => {
    const plan = { siteId: 'saddlers-bench', siteName: '', seed: 1, world: WORLDS[0]!, laid: plainPlan };
    const gripping = setupOf({ terrain: { firstX: -100, spacing: 100, heights: [0, 0, 0], friction: 1.1 } });
    expect(outsideInSimulation({ ...plan, setup: setupOf() }, PLAIN_TOUCHDOWN)).toEqual([
      'uneven ground, not checked from outside',
    ]);
    expect(outsideInSimulation({ ...plan, setup: gripping }, { ...PLAIN_TOUCHDOWN, vx: -5 })).toEqual([
      'horizontal speed -5 m/s, checked from -4 to 4',
      'friction 1.1, checked from 0 to 1',
      'uneven ground, not checked from outside',
    ]);
  });
});
