import { describe, expect, it } from 'vitest';
import { stackUp, type StackUpQuestion } from '../../../engine/dispersion/stackUp.ts';

/** A point mass on level ground: its limit is (L / h) √(2 g (L − h)), so every derivative can be worked out by hand. */
const POINT: StackUpQuestion = {
  body: { mass: 2000, halfStance: 1.5, centerHeight: 2, inertia: 0 },
  condition: { gravity: 1.62, slope: 0, firstContact: 'leading' },
  horizontalSpeed: 0.5,
  limit: 'plastic',
  tolerances: { horizontalSpeed: 0.2, gravity: 0.01, halfStance: 0.05 },
};

/** Change of the margin per descent rate on ground that falls by 0.1 rad in the direction of travel. */
function derivativeAt(descentRate: number): number | undefined {
  const condition = { gravity: 1.62, slope: 0.1, descentRate, firstContact: 'leading' } as const;
  return stackUp({ ...POINT, condition, tolerances: { descentRate: 0.5 } })?.contributions[0]?.derivative;
}

describe('a stack-up of the tip margin', () => {
  it('[DI11] has the derivatives of the closed form', () => {
    const [b, h, g, L] = [1.5, 2, 1.62, 2.5];
    const limit = (L / h) * Math.sqrt(2 * g * (L - h));
    const stack = stackUp(POINT);
    expect(stack?.nominalMargin).toBeCloseTo(limit - 0.5, 12);
    const derivative = Object.fromEntries(stack?.contributions.map((c) => [c.quantity, c.derivative]) ?? []);
    expect(derivative.horizontalSpeed).toBeCloseTo(-1, 9);
    expect(derivative.gravity).toBeCloseTo(limit / (2 * g), 8);
    // d/db of (L/h) √(2g(L − h)) with dL/db = b/L
    expect(derivative.halfStance).toBeCloseTo((b / L) * (limit / L + limit / (2 * (L - h))), 8);
  });

  it('[DI11] adds the effects up, and their squares', () => {
    const stack = stackUp(POINT);
    const effects = stack?.contributions.map((c) => c.effect) ?? [];
    expect(effects).toHaveLength(3);
    const sum = effects.reduce((total, effect) => total + effect, 0);
    const root = Math.sqrt(effects.reduce((total, effect) => total + effect ** 2, 0));
    expect(stack?.worstCase).toBeCloseTo((stack?.nominalMargin ?? 0) - sum, 12);
    expect(stack?.rootSumSquare).toBeCloseTo((stack?.nominalMargin ?? 0) - root, 12);
    expect(stack?.worstCase).toBeLessThan(stack?.rootSumSquare ?? Number.NaN);
  });

  it('[DI11] shows with the true corner how far the linear sum can be trusted', () => {
    const close = stackUp(POINT);
    expect(Math.abs((close?.atWorstCorner ?? NaN) - (close?.worstCase ?? NaN))).toBeLessThan(0.005);
    const wide = stackUp({ ...POINT, tolerances: { halfStance: 1 } });
    expect(Math.abs((wide?.atWorstCorner ?? NaN) - (wide?.worstCase ?? NaN))).toBeGreaterThan(0.05);
  });

  it('[DI11] has the derivative of the closed form in the descent rate, zero while the contact is grazing', () => {
    // ω ~ h v_t − b w is the same at the limit, so dv_h/dv_v = (b cos φ − h sin φ)/(h cos φ + b sin φ) = tan(α − φ);
    // without descent a body that moves downhill does not close on the ground, and the limit along it is what counts
    expect(derivativeAt(0.5)).toBeCloseTo(Math.tan(Math.atan(0.75) - 0.1), 8);
    expect(derivativeAt(0)).toBe(0);
  });

  it('[DI11] has no answer where the body cannot stand', () => {
    expect(stackUp({ ...POINT, condition: { gravity: 1.62, slope: 0.7 } })).toBeUndefined();
  });

  it('[DI11] says by an absent corner that at their worst together there is no limit left', () => {
    const stack = stackUp({ ...POINT, condition: { gravity: 1.62, slope: 0.6 }, tolerances: { slope: 0.06 } });
    expect(stack).toBeDefined();
    expect(stack?.atWorstCorner).toBeUndefined();
  });

  it('refuses a tolerance that is none', () => {
    for (const halfStance of [0, -0.1, Number.NaN, Infinity])
      expect(() => stackUp({ ...POINT, tolerances: { halfStance } })).toThrow(/tolerance of halfStance/);
  });
});
