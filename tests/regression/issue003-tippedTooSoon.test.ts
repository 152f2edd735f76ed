/**
 * A lander was called tipped because its plumb line moved outward, which a body turning about its own center does too; what
 * decides is its angular momentum about the edge. And the friction cone of a sliding pad stood on the vertical, not on the slope.
 */
import { describe, expect, it } from 'vitest';
import { seedRandom } from '../../engine/math/random.ts';
import { ringLander } from '../support/ringLander.ts';
import { drawConditions, MOON, plane, shippedLander, touchDown } from '../support/touchDown.ts';

const DEGREE = Math.PI / 180;

describe('a verdict of tipping', () => {
  it('[TD11] is not given to a leaning lander that its forward speed rights', () => {
    const state = { horizontalSpeed: 0.5, descentRate: 0.5, pitch: -34 * DEGREE };
    const leaning = { lander: shippedLander('steeple'), gravity: MOON, ground: plane(0.8), state };
    const whole = touchDown(leaning, { stopWhenDecided: false });
    expect(whole.restTiltDeg).toBeLessThan(5);
    expect(touchDown(leaning).outcome).toBe('upright');
  });

  it.each([0, 0.05, 0.1])('[TD11] is not given to a lander that slides flat down a slope, friction %f', (friction) => {
    const lander = ringLander({
      mass: 1000,
      inertia: [700, 700, 400],
      centerHeight: 2,
      legCount: 4,
      radius: 0.6,
      firstAzimuth: Math.PI / 4,
      crushForce: 10_000,
    });
    const state = { horizontalSpeed: 0, descentRate: 0.2, pitch: 0.3 };
    const sliding = { lander, gravity: MOON, ground: plane(friction, 0.3), state };
    expect(touchDown(sliding, { timeLimit: 10 }).outcome).not.toMatch(/^tipped/);
    expect(touchDown(sliding, { timeLimit: 10, stopWhenDecided: false }).restTiltDeg).toBeCloseTo(0.3 / DEGREE, 1);
  });

  it('[TD19] comes at the same moment with a history or a ledger kept', () => {
    const random = seedRandom(17);
    for (let i = 0; i < 60; i++) {
      const touchdown = { lander: shippedLander('trivet'), ...drawConditions(random) };
      const { time, outcome, leastMargin } = touchDown(touchdown);
      expect(touchDown(touchdown, { historyEvery: 1 })).toMatchObject({ time, outcome, leastMargin });
      expect(touchDown(touchdown, { ledger: true })).toMatchObject({ time, outcome, leastMargin });
    }
  });
});
