import { describe, expect, it } from 'vitest';
import { ringLander } from '../../support/ringLander.ts';
import { MOON, plane, touchDown } from '../../support/touchDown.ts';

/** Achieved: 2e-4 of the stroke on one leg (the strut is 1e-5 m shorter at 20 kN), less on two and four. */
const STROKE_TOLERANCE = 3e-4;
/** One step of 1/512 s is 3.2e-3 m/s. */
const SPEED_TOLERANCE = 0.0035;

describe('drop on crushable legs', () => {
  // physics.md: 2000 kg, 3 m/s, 20 kN a leg, Moon; stroke = m v^2 / (2 (n F - m g)), energy
  it.each([
    [4, 0.117261],
    [2, 0.244888],
    [1, 0.537263],
  ])('[TD5] crushes %i upright legs by the stroke that takes up the energy, %f m', (legCount, expected) => {
    const lander = ringLander({
      mass: 2000,
      inertia: [2000, 2000, 2000],
      centerHeight: 1.5,
      legCount,
      radius: legCount === 1 ? 0 : 2,
      crushForce: 20_000,
      stiffness: 2e9,
    });
    const result = touchDown(
      { lander, gravity: MOON, ground: plane(0.7), state: { horizontalSpeed: 0, descentRate: 3 } },
      { timeLimit: 0.6 },
    );
    for (const stroke of result.strokes) expect(Math.abs(stroke / expected - 1)).toBeLessThan(STROKE_TOLERANCE);
    for (const load of result.peakLoads) expect(load).toBeCloseTo(20_000, 4);
    expect(result.peakAcceleration).toBeCloseTo((legCount * 20_000) / 2000, 6);
  });

  it('[TD5] with soft struts stores F^2 / 2k in each: n (F s + F^2 / 2k) = m v^2 / 2 + m g (s + F / k)', () => {
    const [force, stiffness, mass] = [20_000, 2e6, 2000];
    const lander = ringLander({
      mass,
      inertia: [2000, 2000, 2000],
      centerHeight: 1.5,
      legCount: 4,
      radius: 2,
      crushForce: force,
      stiffness,
    });
    const result = touchDown(
      { lander, gravity: MOON, ground: plane(0), state: { horizontalSpeed: 0, descentRate: 3 } },
      { timeLimit: 0.3, damping: 0, step: 1 / 4096 },
    );
    const give = force / stiffness;
    const stroke = ((mass * 9) / 2 + mass * MOON * give - 2 * force * give) / (4 * force - mass * MOON);
    for (const one of result.strokes) expect(Math.abs(one - stroke)).toBeLessThan(STROKE_TOLERANCE * stroke);
  });

  it('[TD5] crushes two stages in turn, each at its own force', () => {
    const base = ringLander({
      mass: 2000,
      inertia: [2000, 2000, 2000],
      centerHeight: 1.5,
      legCount: 4,
      radius: 2,
      crushForce: 10_000,
      stiffness: 1e9,
    });
    const stages = [
      { force: 10_000, stroke: 0.1 },
      { force: 25_000, stroke: 0.3 },
    ];
    const lander = { ...base, legs: base.legs.map((leg) => ({ ...leg, stages })) };
    const result = touchDown(
      { lander, gravity: MOON, ground: plane(0), state: { horizontalSpeed: 0, descentRate: 3 } },
      { timeLimit: 0.3 },
    );
    // 9000 J + m g s = 4 (10 kN 0.1 m + 25 kN (s - 0.1 m))
    const stroke = (9000 + 6000) / (100_000 - 2000 * MOON);
    for (const one of result.strokes) expect(Math.abs(one / stroke - 1)).toBeLessThan(STROKE_TOLERANCE);
    expect(result.limitsHit).toEqual([]);
  });
});

describe('fall after probe contact', () => {
  it.each([
    // 67 in and 3 ft/s, of which physics.md prints the rounded values beside the result
    [1.7018, 0.9144, 2.523],
    [1.7, 0.914, 2.5215],
  ])('meets the ground from %f m and %f m/s at %f m/s', (height, descentRate, expected) => {
    const lander = ringLander({
      mass: 2000,
      inertia: [1500, 1500, 2500],
      centerHeight: 0.8,
      legCount: 4,
      radius: 2.5,
      crushForce: 50_000,
    });
    const result = touchDown(
      { lander, gravity: MOON, ground: plane(0.7), state: { horizontalSpeed: 0, descentRate, height } },
      { historyEvery: 1 },
    );
    const before = result.history!.findLast((sample) => sample.time < result.firstContact)!;
    expect(Math.abs(-before.velocity[2] - expected)).toBeLessThan(SPEED_TOLERANCE);
    expect(Math.abs(result.firstContact - (expected - descentRate) / MOON)).toBeLessThan(2 * result.step);
  });
});
