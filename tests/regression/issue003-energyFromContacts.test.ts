/**
 * Energy appeared where a foot stuck to a vertex of a profile while it moved round it, where a fast body passed through a wall narrower
 * than the search for the ground, and where a stiff lateral stage was made softer at unchanged force as its leg bottomed.
 */
import { describe, expect, it } from 'vitest';
import type { TouchdownCase } from '../../engine/touchdown/index.ts';
import { ringLander } from '../support/ringLander.ts';
import { MOON, plane, shippedLander, touchDown } from '../support/touchDown.ts';

/** Largest rise of mechanical energy, over the energy at the start [-]. */
function riseOf(touchdown: TouchdownCase): number {
  const { ledger } = touchDown(touchdown, { ledger: true });
  return ledger!.largestRise / ledger!.kineticStart;
}

describe('a passive touchdown', () => {
  it('[TD1] gains nothing from friction at the vertices of a profile', () => {
    const heights = Array.from({ length: 81 }, (_, i) => 0.4 * (Math.abs((((i % 8) + 8) % 8) - 4) / 4));
    const terrain = { firstX: -20, spacing: 0.5, heights, friction: 0.9 };
    const rise = riseOf({
      lander: shippedLander('trivet'),
      gravity: MOON,
      ground: { shape: { kind: 'profile', terrain }, friction: 0.9 },
      state: { horizontalSpeed: -1.5, descentRate: 1.5, position: [-0.4, 0] },
    });
    expect(rise).toBeLessThan(1e-4);
  });

  it('[TD1] gains nothing from a wall, and does not pass through it', () => {
    const heights = Array.from({ length: 161 }, (_, i) => Math.max(0, Math.min(5, 5 * (i - 104))));
    const terrain = { firstX: -20, spacing: 0.25, heights, friction: 0.8 };
    for (const horizontalSpeed of [5, 10]) {
      const touchdown: TouchdownCase = {
        lander: shippedLander('trivet'),
        gravity: MOON,
        ground: { shape: { kind: 'profile', terrain }, friction: 0.8 },
        state: { horizontalSpeed, descentRate: 1, height: 2 },
      };
      expect(riseOf(touchdown)).toBeLessThan(1e-3);
    }
  });

  it('[TD1] gains nothing when a leg with a stiff lateral stage bottoms', () => {
    const lander = ringLander({
      mass: 2000,
      inertia: [1500, 1500, 2500],
      centerHeight: 1.5,
      legCount: 4,
      radius: 2.5,
      crushForce: 5000,
      stroke: 0.1,
      stiffness: 1e6,
      bottomedStiffness: 1e6,
      hipInset: 1,
      secondary: { force: 1e9, stroke: 1, stiffness: 1e9 },
    });
    const state = { horizontalSpeed: 2, descentRate: 3 };
    const result = touchDown({ lander, gravity: MOON, ground: plane(1), state }, { ledger: true });
    expect(Math.max(...result.strokesUsed)).toBeGreaterThanOrEqual(1);
    expect(result.ledger!.largestRise / result.ledger!.kineticStart).toBeLessThan(1e-4);
  });
});
