import { describe, expect, it } from 'vitest';
import { FIRST_LATERAL_ROOT, lateralMode } from '../../../engine/slosh/lateralMode.ts';
import { riseAtWall } from '../../../engine/slosh/swing.ts';

/**
 * First lateral mode of an upright cylinder against [Abramson1966], NASA SP-106 (formulas from memory; figures worked
 * apart from this engine). `figure` is half a unit in the last printed place. Achieved: every printed figure; hinge 1.2e-14.
 */
const TOLERANCE = {
  frequencySquared: { figure: 0.5e-6 },
  massRatio: { figure: 0.5e-6 },
  hertz: { figure: 0.5e-5 },
  root: { residual: 1e-15 },
  hinge: { integrated: 1e-13 },
} as const;

/** Bessel function of the first kind by its power series; terms fall fast at arguments of 2 and less. */
function bessel(order: number, x: number): number {
  let term = 1;
  for (let k = 1; k <= order; k++) term *= x / 2 / k;
  let sum = term;
  for (let k = 1; k < 30; k++) {
    term *= -(x * x) / 4 / k / (k + order);
    sum += term;
  }
  return sum;
}

/** J1′ = J0 − J1/x */
function derivative(x: number): number {
  return bessel(0, x) - bessel(1, x) / x;
}

/** Midpoint rule with Richardson's correction: fourth order. */
function integral(f: (x: number) => number, low: number, high: number): number {
  const rule = (n: number): number => {
    const width = (high - low) / n;
    let sum = 0;
    for (let i = 0; i < n; i++) sum += f(low + (i + 0.5) * width);
    return sum * width;
  };
  return (4 * rule(4000) - rule(2000)) / 3;
}

describe('first lateral mode of an upright cylinder [Abramson1966]', () => {
  it.each([
    [0.5, 1.337026, 0.660108],
    [1, 1.750798, 0.432197],
    [2, 1.838854, 0.226967],
  ])('[SL1] at h/R %d has ω² R/g = %d and m1/m = %d', (depth, frequencySquared, massRatio) => {
    const mode = lateralMode({ radius: 1, depth }, 9.81);
    expect(Math.abs(mode.frequency ** 2 / 9.81 - frequencySquared)).toBeLessThan(TOLERANCE.frequencySquared.figure);
    expect(Math.abs(mode.massRatio - massRatio)).toBeLessThan(TOLERANCE.massRatio.figure);
  });

  it('[SL1] swings at 0.65959 Hz for R = h = 1 m, g 9.81 m/s²', () => {
    const { frequency } = lateralMode({ radius: 1, depth: 1 }, 9.81);
    expect(Math.abs(frequency / (2 * Math.PI) - 0.65959)).toBeLessThan(TOLERANCE.hertz.figure);
  });

  it('[SL2] rests on the first root of J1′, and there is none before it', () => {
    expect(Math.abs(derivative(FIRST_LATERAL_ROOT))).toBeLessThan(TOLERANCE.root.residual);
    for (let x = 0.01; x < 1.84; x += 0.01) expect(derivative(x)).toBeGreaterThan(0);
  });

  it.each([0.3, 1, 2.5])('[SL9] at h/R %d has as much moment in its surface as in its pendulum', (depth) => {
    // surface η J1(ξ r)/J1(ξ) cos θ, R = 1, density 1; the integral over θ is π
    const k = FIRST_LATERAL_ROOT;
    const angle = 0.1;
    const shape = integral((r) => bessel(1, k * r) * r * r, 0, 1) / bessel(1, k);
    const { massRatio, pendulumLength } = lateralMode({ radius: 1, depth }, 1.62);
    const ofPendulum = massRatio * Math.PI * depth * pendulumLength * angle;
    expect(Math.abs((Math.PI * riseAtWall(1, angle) * shape) / ofPendulum - 1)).toBeLessThan(
      TOLERANCE.hinge.integrated,
    );
  });

  it.each([0.3, 1, 2.5])(
    '[SL3] at h/R %d acts at the hinge where the integrated wall and bottom pressures do',
    (depth) => {
      // pressure J1(ξ r) cos θ cosh(ξ z), R = 1; the integrals over θ are π each
      const k = FIRST_LATERAL_ROOT;
      const wall = bessel(1, k);
      const force = integral((z) => wall * Math.cosh(k * z), 0, depth);
      const wallMoment = integral((z) => wall * Math.cosh(k * z) * z, 0, depth);
      const bottomMoment = integral((r) => bessel(1, k * r) * r * r, 0, 1);
      const { hingeHeight, pendulumLength } = lateralMode({ radius: 1, depth }, 1.62);
      const hinge = (wallMoment + bottomMoment) / force;
      expect(Math.abs(hingeHeight / hinge - 1)).toBeLessThan(TOLERANCE.hinge.integrated);
      // published place of the equivalent mass on a spring, from the middle of the liquid: h/2 − (d/1.84) tanh(1.84 h/d)
      const massHeight = depth / 2 - (2 / k) * Math.tanh((k * depth) / 2);
      expect(hingeHeight - pendulumLength).toBeCloseTo(depth / 2 + massHeight, 12);
    },
  );
});
