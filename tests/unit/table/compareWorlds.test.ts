import { describe, expect, it } from 'vitest';
import { compareWorlds } from '../../../engine/table/index.ts';
import {
  createDescent,
  readDescent,
  stepDescent,
  type DescentSetup,
  type TouchdownState,
} from '../../../engine/world/index.ts';
import { plainLander } from '../../support/plainLander.ts';

const setup: DescentSetup = {
  lander: plainLander(),
  gravity: 1.62422,
  terrain: { firstX: -100, spacing: 10, heights: Array.from({ length: 21 }, () => 3), friction: 5 },
  start: { x: 0, y: 40, angle: 0, vx: 0, vy: -1, rate: 0 },
  propellant: 0,
};

const touchdown: TouchdownState = {
  tick: 900,
  x: 4,
  vx: 2.2,
  descentRate: 0.02,
  angle: 0,
  rate: 0,
  slope: 0,
  mass: 2000,
  firstFoot: 'both',
};

describe('the same touchdown on the Moon, Mars and Earth', () => {
  const worlds = compareWorlds(touchdown, setup);

  it('[TA18] has one static tilt and three trip limits, as published', () => {
    expect(worlds.map(({ world }) => world.name)).toEqual(['Moon', 'Mars', 'Earth']);
    for (const { staticTilt } of worlds) expect(staticTilt).toBeCloseTo(Math.atan(0.75), 12);
    // published: 1.7740, 2.6875, 4.3589 m/s; the legs take up the descent rate
    const published = [1.774, 2.6875, 4.3589];
    worlds.forEach(({ limit }, i) => expect(limit?.closedForm).toBeCloseTo(published[i] ?? 0, 4));
  });

  it('[TA18] ends tipped where 2.2 m/s is outside and upright where it is inside', () => {
    expect(worlds.map(({ band, outcome }) => [band, outcome])).toEqual([
      ['outside', 'tipped downhill'],
      ['adequate', 'upright inside limit'],
      ['desired', 'upright inside limit'],
    ]);
  });

  it('[TA18] starts an instant before the contact with the velocities of the contact', () => {
    for (const { setup: start, input } of worlds) {
      const descent = createDescent(start);
      const before = readDescent(descent);
      expect(before).toMatchObject({ x: 4, vx: 2.2, vy: -0.02, angle: 0 });
      expect(before.height).toBeGreaterThan(0);
      expect(before.height).toBeLessThan(1e-5);
      stepDescent(descent, input);
      expect(readDescent(descent).touchdown).toBeDefined();
    }
  });

  it.each([
    [0, 0],
    [0.1, 6],
    [-0.1, -6],
    [0.7, 30],
    [-0.7, -30],
  ])('[TA18] tells the thrusters to hold the attitude that there is, %f rad, as %i whole degrees', (angle, tiltDeg) => {
    const [moon] = compareWorlds({ ...touchdown, angle }, setup, ['moon']);
    expect(moon?.input).toEqual({ thrustPercent: 0, tiltDeg });
  });

  it('[TA18] can be replayed to the same end from what it gives', () => {
    for (const { setup: start, input, final } of worlds) {
      const descent = createDescent(start);
      while (readDescent(descent).outcome === undefined) stepDescent(descent, input);
      expect(readDescent(descent)).toEqual(final);
    }
  });

  it('[TA18] takes other worlds by name and refuses one that there is not', () => {
    expect(compareWorlds(touchdown, setup, ['ceres']).map(({ outcome }) => outcome)).toEqual(['tipped downhill']);
    expect(() => compareWorlds(touchdown, setup, ['nowhere'])).toThrow("world 'nowhere'");
  });
});
