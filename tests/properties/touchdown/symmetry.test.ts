import { describe, expect, it } from 'vitest';
import type { Lander } from '../../../engine/lander/lander.ts';
import type { TouchdownConditions, TouchdownResult } from '../../../engine/touchdown/index.ts';
import { ringLander, type RingLander } from '../../support/ringLander.ts';
import { MOON, plane, touchDown } from '../../support/touchDown.ts';

const SHAPE: RingLander = {
  mass: 3000,
  inertia: [4000, 4000, 5000],
  centerHeight: 2,
  legCount: 4,
  radius: 2.6,
  crushForce: 15_000,
  stiffness: 1e6,
  hipInset: 1,
  secondary: { force: 9000, stroke: 0.4, stiffness: 6e5 },
};
const lander = ringLander(SHAPE);

function conditions(
  changes: Partial<TouchdownConditions['state']>,
  slope = 0.12,
  fallAzimuth = 0,
): TouchdownConditions {
  return {
    gravity: MOON,
    ground: plane(0.8, slope, fallAzimuth),
    state: {
      horizontalSpeed: 1.3,
      descentRate: 2,
      yaw: 0.2,
      pitch: 0.05,
      roll: -0.03,
      rates: [0.03, 0.05, -0.02],
      ...changes,
    },
  };
}

/** Short enough that rounding and the 1e-5 to which a lateral force is found, which bounces multiply, are still small. */
const OPTIONS = { timeLimit: 1.2, stopWhenDecided: false } as const;
const CLOSE = 1e-5;

/** Largest difference of two lists, relative where the numbers are above 1. */
function difference(a: readonly number[], b: readonly number[]): number {
  expect(a.length).toBe(b.length);
  return Math.max(...a.map((value, i) => Math.abs(value - b[i]!) / Math.max(1, Math.abs(value))));
}

function measures(result: TouchdownResult): readonly number[] {
  return [result.leastMargin.value, result.slide, result.restTiltDeg, result.peakAcceleration, result.leastMargin.time];
}

describe('symmetry', () => {
  it('[TD6] mirrors left and right: roll, yaw and lateral rates change sign, legs swap', () => {
    const right = touchDown({ lander, ...conditions({}) }, OPTIONS);
    const left = touchDown({ lander, ...conditions({ yaw: -0.2, roll: 0.03, rates: [-0.03, 0.05, 0.02] }) }, OPTIONS);
    expect(difference(measures(left), measures(right))).toBeLessThan(CLOSE);
    // leg 1 at +y and leg 3 at -y change places
    const [a, b, c, d] = right.strokes;
    expect(difference(left.strokes, [a!, d!, c!, b!])).toBeLessThan(CLOSE);
    expect(Math.max(...right.strokes)).toBeGreaterThan(0.02);
  });

  it.each([3, 4, 5, 6])('[TD7] yaw by a full turn over %i legs changes nothing but which leg is which', (legCount) => {
    const ring = ringLander({ ...SHAPE, legCount });
    const level = { pitch: 0, roll: 0, rates: [0, 0, 0] as const };
    const before = touchDown({ lander: ring, ...conditions(level) }, OPTIONS);
    const after = touchDown(
      { lander: ring, ...conditions({ ...level, yaw: 0.2 - (2 * Math.PI) / legCount }) },
      OPTIONS,
    );
    expect(difference(measures(after), measures(before))).toBeLessThan(CLOSE);
    expect(difference(after.strokes, [...before.strokes.slice(-1), ...before.strokes.slice(0, -1)])).toBeLessThan(
      CLOSE,
    );
    expect(Math.max(...before.strokes)).toBeGreaterThan(0.02);
  });

  it('turning the whole world about the vertical changes nothing', () => {
    const before = touchDown({ lander, ...conditions({}) }, OPTIONS);
    const turned = touchDown({ lander, ...conditions({ yaw: 0.2 + 1.1 }, 0.12, 1.1) }, OPTIONS);
    expect(difference(measures(turned), measures(before))).toBeLessThan(CLOSE);
    expect(difference(turned.strokes, before.strokes)).toBeLessThan(CLOSE);
  });

  it('a constant added to x and y changes nothing on a plane', () => {
    const before = touchDown({ lander, ...conditions({}) }, OPTIONS);
    const moved = touchDown({ lander, ...conditions({ position: [31, -17] }) }, OPTIONS);
    expect(difference(measures(moved), measures(before))).toBeLessThan(CLOSE);
    expect(difference(moved.strokes, before.strokes)).toBeLessThan(CLOSE);
  });
});

/** Lengths times k, gravity times s, mass times c; forces follow as mass x gravity, times as sqrt(k / s). */
function scaledLander(k: number, s: number, c: number): Lander {
  const force = c * s;
  return ringLander({
    ...SHAPE,
    mass: SHAPE.mass * c,
    inertia: [4000 * c * k * k, 4000 * c * k * k, 5000 * c * k * k],
    centerHeight: 2 * k,
    radius: 2.6 * k,
    crushForce: 15_000 * force,
    stroke: k,
    stiffness: (1e6 * force) / k,
    bottomedStiffness: (4e6 * force) / k,
    hipInset: k,
    hipHeight: 1.5 * k,
    secondary: { force: 9000 * force, stroke: 0.4 * k, stiffness: (6e5 * force) / k },
  });
}

describe('similarity', () => {
  it.each([
    [2, 1, 1],
    [1, 6.04, 1],
    [0.25, 3, 0.1],
    [4, 0.5, 40],
  ])(
    '[TD8] lengths x %f, gravity x %f, mass x %f: speeds x sqrt(k s), times x sqrt(k / s), all else in proportion',
    (k, s, c) => {
      const time = Math.sqrt(k / s);
      const speed = Math.sqrt(k * s);
      const base = touchDown({ lander: scaledLander(1, 1, 1), ...conditions({}) }, { ...OPTIONS, step: 1 / 1024 });
      const state = conditions({}).state;
      const rates = state.rates!.map((rate) => rate / time) as [number, number, number];
      const result = touchDown(
        {
          lander: scaledLander(k, s, c),
          gravity: MOON * s,
          ground: plane(0.8, 0.12),
          state: { ...state, horizontalSpeed: 1.3 * speed, descentRate: 2 * speed, rates },
        },
        { ...OPTIONS, timeLimit: OPTIONS.timeLimit * time, step: time / 1024 },
      );
      expect(difference([result.leastMargin.value / k], [base.leastMargin.value])).toBeLessThan(CLOSE);
      expect(difference([result.leastMargin.time / time], [base.leastMargin.time])).toBeLessThan(CLOSE);
      expect(
        difference(
          result.strokes.map((stroke) => stroke / k),
          base.strokes,
        ),
      ).toBeLessThan(CLOSE);
      expect(
        difference(
          result.peakLoads.map((load) => load / (c * s * 1e4)),
          base.peakLoads.map((load) => load / 1e4),
        ),
      ).toBeLessThan(CLOSE);
      expect(difference([result.peakAcceleration / s], [base.peakAcceleration])).toBeLessThan(CLOSE);
      expect(difference([result.restTiltDeg, result.slide / k], [base.restTiltDeg, base.slide])).toBeLessThan(CLOSE);
    },
  );

  it('[TD9] mass, forces and stiffness in proportion leave the motion as it is', () => {
    const base = touchDown({ lander: scaledLander(1, 1, 1), ...conditions({}) }, OPTIONS);
    const heavy = touchDown({ lander: scaledLander(1, 1, 7), ...conditions({}) }, OPTIONS);
    expect(difference(measures(heavy), measures(base))).toBeLessThan(CLOSE);
    expect(difference(heavy.strokes, base.strokes)).toBeLessThan(CLOSE);
  });
});
