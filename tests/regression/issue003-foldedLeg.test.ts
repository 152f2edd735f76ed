/** A leg that was not latched folded on for longer than it was, through the hull, and held its corner of the footprint all the while. */
import { describe, expect, it } from 'vitest';
import { ringLander } from '../support/ringLander.ts';
import { MOON, plane, touchDown } from '../support/touchDown.ts';

describe('a leg that is not latched', () => {
  it('[TD14] is gone once folded, so that a lander on the other two does not pass for upright on its side', () => {
    const lander = ringLander({
      mass: 1000,
      inertia: [600, 600, 500],
      centerHeight: 0.75,
      legCount: 3,
      radius: 0.8,
      crushForce: 6000,
      stroke: 0.3,
      stiffness: 5e5,
      hipInset: 0.2,
      hipHeight: 0.8,
      hull: [
        [0.3, 0.3, 0.3],
        [-0.3, 0.3, 0.3],
        [-0.3, -0.3, 0.3],
        [0.3, -0.3, 0.3],
        [0, 0, 1.5],
      ],
    });
    const state = { horizontalSpeed: 0, descentRate: 0.5 };
    const legs = [{ leg: 0, kind: 'not latched', factor: 0.02 }] as const;
    const result = touchDown({ lander, gravity: MOON, ground: plane(0.8), state, legs });
    expect(result.outcome).toMatch(/^tipped/);
    expect(result.strokes[0]).toBeLessThan(1);
  });
});
