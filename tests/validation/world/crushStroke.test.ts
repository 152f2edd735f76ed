import { describe, expect, it } from 'vitest';
import { readDescent } from '../../../engine/world/index.ts';
import { dropLander, MOON, settle } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

/**
 * Drop on crushable legs: 2000 kg, 3 m/s, 20 kN a leg, Moon.
 *
 *   ½ m v² + m g s = n F s                             energy, textbook physics
 *
 * Expected strokes as in the check table of the stability engine: 4 legs 0.117261 m, 2 legs 0.244889 m. A lander
 * needs four feet here, so two legs of 20 kN are four of 10 kN.
 */
const CASES = [
  { legs: 4, force: 20_000, expected: 0.117261 },
  { legs: 2, force: 10_000, expected: 0.244889 },
];

/** Stiff enough that the elastic part of the stroke is below half a millimeter [N/m]. */
const STIFF = 5e7;

/** Largest relative error of the stroke [-]. Achieved: 4 legs 0.2 %, 2 legs 0.1 %. */
const STROKE_TOLERANCE = 0.01;

function stroke(force: number, descentRate: number, stiffness: number) {
  const descent = dropLander({ lander: plainLander({ force, stiffness }), descentRate });
  settle(descent);
  return readDescent(descent);
}

describe('drop on crushable legs', () => {
  it.each(CASES)('[PL5] crushes $legs legs by what energy asks', ({ force, expected }) => {
    const { legs, outcome } = stroke(force, 3, STIFF);
    const energy = (0.5 * 2000 * 9) / (4 * force - 2000 * MOON);
    // the table rounds gravity too
    expect(Math.abs(energy - expected)).toBeLessThan(2e-6);
    expect(outcome).toBe('upright');
    for (const leg of legs) expect(Math.abs(leg.stroke / expected - 1)).toBeLessThan(STROKE_TOLERANCE);
  });

  it.each(CASES)(
    '[PL5] crushes both sides of $legs legs alike to the last bit, and stays upright to it',
    ({ force }) => {
      const { legs, angle, x } = stroke(force, 3, STIFF);
      expect(legs[0]?.stroke).toBe(legs[1]?.stroke);
      expect(legs[0]?.stroke).toBeGreaterThan(0.1);
      expect(angle).toBe(0);
      expect(x).toBe(0);
    },
  );

  it('[PL5] crushes in two stages by what energy asks', () => {
    // the first stage takes 4 x 10 kN over 0.1 m; what is left of ½ m v² goes into the second at 4 x 20 kN
    const lander = plainLander({ stiffness: STIFF });
    const legs = lander.legs.map((leg) => ({
      ...leg,
      stages: [
        { force: 10_000, stroke: 0.1 },
        { force: 20_000, stroke: 0.4 },
      ],
    }));
    const descent = dropLander({ lander: { ...lander, legs }, descentRate: 4 });
    settle(descent);
    const rest = 0.5 * 2000 * 16 - (40_000 - 2000 * MOON) * 0.1;
    const expected = 0.1 + rest / (80_000 - 2000 * MOON);
    const { stroke: came = 0 } = readDescent(descent).legs[0] ?? {};
    expect(Math.abs(came / expected - 1)).toBeLessThan(STROKE_TOLERANCE);
  });

  it.each([2e6, 1e6, 5e5])('[PL5] crushes less by what an elastic leg of %d N/m takes first', (stiffness) => {
    // from first contact to the deepest point: ½ m v² + m g (s + e) = n F s + n·(work up to the force), e = F/k; the
    // damper may bring that work from ½ F e up to F e, so the stroke lies between the two
    const e = 20_000 / stiffness;
    const energy = 9000 + 2000 * MOON * e;
    const most = (energy - 4 * 0.5 * 20_000 * e) / (80_000 - 2000 * MOON);
    const least = (energy - 4 * 20_000 * e) / (80_000 - 2000 * MOON);
    const { stroke: came = 0 } = stroke(20_000, 3, stiffness).legs[0] ?? {};
    expect(came).toBeLessThan(most);
    expect(came).toBeGreaterThan(least * (1 - STROKE_TOLERANCE));
  });
});
