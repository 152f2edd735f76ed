import { describe, expect, it } from 'vitest';
import { createDescent, type DescentSetup } from '../../../engine/world/index.ts';
import { evenGround, MOON } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

const TERRAIN = evenGround();
const START = { x: 0, y: 50, angle: 0, vx: 0, vy: 0, rate: 0 };
const SETUP: DescentSetup = {
  lander: plainLander({ propellant: 100 }),
  gravity: MOON,
  terrain: TERRAIN,
  start: START,
  propellant: 100,
};

describe('the setup of a descent', () => {
  it.each<readonly [string, Partial<DescentSetup>, RegExp]>([
    ['no gravity', { gravity: 0 }, /gravity/],
    ['gravity upwards', { gravity: -1 }, /gravity/],
    ['gravity of a star', { gravity: 100 }, /gravity/],
    ['owed propellant', { propellant: -1 }, /propellant/],
    ['propellant without end', { propellant: Infinity }, /propellant/],
    ['heights closer than a decimeter', { terrain: { ...TERRAIN, spacing: 0.09 } }, /spacing/],
    ['heights farther apart than ten meters', { terrain: { ...TERRAIN, spacing: 10.1 } }, /spacing/],
    ['ground of one height', { terrain: { ...TERRAIN, heights: [0] } }, /two heights/],
    ['ground with a hole', { terrain: { ...TERRAIN, heights: [0, Number.NaN, 0] } }, /ground is finite/],
    ['ground nowhere', { terrain: { ...TERRAIN, firstX: Infinity } }, /ground is finite/],
    ['friction that drives', { terrain: { ...TERRAIN, friction: -0.1 } }, /friction/],
    ['friction of ten', { terrain: { ...TERRAIN, friction: 10 } }, /friction/],
    ['an endless turn', { start: { ...START, rate: Infinity } }, /start is finite/],
    ['half a kilometer a second', { start: { ...START, vx: 300, vy: -400 } }, /slower than 500 m\/s/],
    ['feet in the ground', { start: { ...START, y: 2 } }, /all feet above the ground/],
  ])('[PL13] is refused with %s', (_, wrong, words) => {
    expect(() => createDescent({ ...SETUP, ...wrong })).toThrow(words);
  });

  it('[PL13] is taken at the ends of what is allowed', () => {
    const edges: readonly Partial<DescentSetup>[] = [
      { gravity: 99.9 },
      { propellant: 0 },
      { terrain: { firstX: -1, spacing: 0.1, heights: [0, 0], friction: 0 } },
      { terrain: { firstX: -1, spacing: 10, heights: [0, 0], friction: 9.9 } },
      { start: { ...START, vx: 299, vy: -400 } },
      { start: { ...START, y: 2.001 } },
    ];
    for (const edge of edges) expect(createDescent({ ...SETUP, ...edge }).tick).toBe(0);
  });
});
