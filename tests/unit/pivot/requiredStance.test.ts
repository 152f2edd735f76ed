import { describe, expect, it } from 'vitest';
import { requiredStance, tripLimit, WIDEST } from '../../../engine/pivot/index.ts';

const DEG = Math.PI / 180;
const body = { mass: 2000, centerHeight: 1.8, inertia: 2500 };

/** The stance that a body of k times the lengths needs, on a slope on which it just has to stand. */
function sized(k: number): ReturnType<typeof requiredStance> {
  return requiredStance(
    { ...body, centerHeight: 2 * k, inertia: body.mass * k * k },
    { speed: 1e-9 * Math.sqrt(k), gravity: 1.62422, slope: 0.2 },
  );
}

describe('required stance', () => {
  it.each([
    { speed: 0.05, gravity: 1.62422, slope: 0 },
    { speed: 2, gravity: 1.62422, slope: 0 },
    { speed: 6, gravity: 9.80665, slope: 8 * DEG },
    { speed: 3, gravity: 3.72787, slope: -5 * DEG },
    { speed: 15, gravity: 0.1, slope: 0 },
  ])('[TR10] is where the trip limit, plastic and lossless, equals the speed: %j', (demand) => {
    const needed = requiredStance(body, demand);
    for (const measure of ['plastic', 'lossless'] as const) {
      const stance = needed[measure];
      if (stance.kind !== 'stance') throw new Error('a stance exists');
      expect(stance.governedBy).toBe('trip');
      const limit = tripLimit({ ...body, halfStance: stance.halfStance }, demand);
      if (limit.kind !== 'limit') throw new Error('the body stands');
      expect(Math.abs((limit[measure]?.alongGround ?? 0) / demand.speed - 1)).toBeLessThan(1e-12);
    }
  });

  it('[TR10] asks for a wider stance by the lossless bound than by the plastic pivot', () => {
    const { plastic, lossless } = requiredStance(body, { speed: 2, gravity: 1.62422 });
    if (plastic.kind !== 'stance' || lossless.kind !== 'stance') throw new Error('both exist');
    expect(lossless.halfStance).toBeGreaterThan(plastic.halfStance);
  });

  it('[TR10] is what standing asks for on a rising slope that a slow body cannot trip on', () => {
    const { plastic } = requiredStance(body, { speed: 0.01, gravity: 1.62422, slope: -10 * DEG });
    const standing = 1.8 * Math.tan(10 * DEG);
    expect(plastic).toEqual({ kind: 'stance', governedBy: 'standing', halfStance: expect.closeTo(standing, 6) });
  });

  it('[TR10] says so when no stance up to the widest is enough', () => {
    expect(requiredStance(body, { speed: 1e6, gravity: 1.62422 })).toEqual({
      plastic: { kind: 'none', widest: WIDEST * 1.8 },
      lossless: { kind: 'none', widest: WIDEST * 1.8 },
    });
  });

  it('[TR10] says so on a slope so steep that merely standing asks for more than the widest', () => {
    // tan 89.99 deg = 5730 heights
    const none = { kind: 'none', widest: WIDEST * 1.8 };
    const demand = { speed: 0.01, gravity: 1.62422, slope: 89.99 * DEG };
    expect(requiredStance(body, demand)).toEqual({ plastic: none, lossless: none });
  });

  it('[TR10] grows with the size of the body alone, also where just standing is what governs', () => {
    const one = sized(1);
    if (one.plastic.kind !== 'stance') throw new Error('a stance holds it');
    expect(one.plastic.governedBy).toBe('standing');
    for (const k of [0.01, 100]) {
      const { plastic } = sized(k);
      if (plastic.kind !== 'stance') throw new Error('a stance holds it');
      // similar bodies stand alike: gravity moment and inertia scale together
      expect(plastic.halfStance / (k * one.plastic.halfStance)).toBeCloseTo(1, 12);
    }
  });

  it('[TR10] refuses a speed of nothing, which any stance withstands', () => {
    expect(() => requiredStance(body, { speed: 0, gravity: 1.62422 })).toThrow('speed');
    expect(() => requiredStance(body, { speed: Number.NaN, gravity: 1.62422 })).toThrow('speed');
  });
});
