import { describe, expect, it } from 'vitest';
import { ringLander } from '../../support/ringLander.ts';
import { MOON, plane, touchDown } from '../../support/touchDown.ts';

const [MASS, LEAST_MOMENT, RADIUS, HEIGHT, LEGS] = [2000, 1500, 2, 1.5, 4];

function stepOf(stiffness: number, bottomedStiffness: number, across: number, damping: number): number {
  const lander = ringLander({
    mass: MASS,
    inertia: [LEAST_MOMENT, 1800, 2500],
    centerHeight: HEIGHT,
    legCount: LEGS,
    radius: RADIUS,
    crushForce: 10_000,
    stiffness,
    bottomedStiffness,
    hipInset: 1,
    secondary: { force: 5000, stroke: 0.3, stiffness: across },
  });
  const state = { horizontalSpeed: 0, descentRate: 1 };
  return touchDown({ lander, gravity: MOON, ground: plane(1), state }, { step: 0.01, damping, maxSteps: 8 }).step;
}

/** Of a unit impulse at a foot, at most: 1/m + r²/I [1/kg]. */
const MOBILITY = 1 / MASS + (RADIUS * RADIUS + HEIGHT * HEIGHT) / LEAST_MOMENT;

describe('the step of a touchdown', () => {
  it.each([
    ['leg', 4e7, 4e7, 1e6, 4e7, 4e7],
    ['leg that is used up', 1e6, 4e7, 1e6, 4e7, 1e6],
    ['secondary strut', 1e6, 2e6, 4e7, 4e7, 4e7],
  ])(
    '[TD10] is what the stiffest state of its feet bears when that is a %s: K h² + C h = 1/2',
    (_, stiffness, bottomed, across, stiffest, unspent) => {
      for (const damping of [0, 0.2]) {
        const k = LEGS * stiffest * MOBILITY;
        const c = LEGS * 2 * damping * Math.sqrt((unspent * MASS) / LEGS) * MOBILITY;
        const h = stepOf(stiffness, bottomed, across, damping);
        expect(k * h * h + c * h).toBeCloseTo(1 / 2, 9);
      }
    },
  );

  it('[TD10] is the one asked for where the feet bear it', () => {
    const lander = ringLander({
      mass: MASS,
      inertia: [1500, 1500, 2500],
      centerHeight: HEIGHT,
      legCount: LEGS,
      radius: RADIUS,
      crushForce: 10_000,
    });
    const state = { horizontalSpeed: 0, descentRate: 1 };
    const arrival = { lander, gravity: MOON, ground: plane(1), state };
    expect(touchDown(arrival, { step: 1 / 8192, maxSteps: 8 }).step).toBe(1 / 8192);
  });
});
