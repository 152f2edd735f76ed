import { describe, expect, it } from 'vitest';
import type { Soil } from '../../../engine/ground/index.ts';
import { bekkerCoefficient } from '../../../engine/touchdown/soil.ts';
import { ringLander } from '../../support/ringLander.ts';
import { MOON, plane, touchDown } from '../../support/touchDown.ts';

/** Lunar soil of the Lunar Sourcebook (1991), sec. 9.1: k_c 1.4 kN/m^2, k_phi 820 kN/m^3, n = 1. */
const LUNAR = { kind: 'bekker', cohesive: 1400, frictional: 820_000, exponent: 1, stiffness: 1e9 } as const;
const PAD_AREA = 0.6875;
const PAD_DIAMETER = 2 * Math.sqrt(PAD_AREA / Math.PI);

function landerOnSoil(mass: number, soil: Soil, damping: number): readonly number[] {
  const base = ringLander({
    mass,
    inertia: [mass, mass, mass],
    centerHeight: 1.5,
    legCount: 4,
    radius: 3,
    crushForce: 1e9,
    stiffness: 1e8,
    bottomedStiffness: 1e8,
  });
  const lander = { ...base, legs: base.legs.map((leg) => ({ ...leg, footpadDiameter: PAD_DIAMETER })) };
  const ground = { ...plane(0.7), soil };
  const state = { horizontalSpeed: 0, descentRate: 0 };
  return touchDown({ lander, gravity: MOON, ground, state }, { damping, timeLimit: 3 }).sinkages;
}

describe('sinkage in soil', () => {
  it('is 35 mm for a footpad of 0.6875 m^2 that carries 20.0 kN', () => {
    const sinkage = 20_000 / bekkerCoefficient(1400, 820_000, PAD_DIAMETER);
    expect(Math.abs(sinkage / 0.035 - 1)).toBeLessThan(0.012);
  });

  it('of a weight let go at the surface is twice that of the same weight put down slowly (energy)', () => {
    // m g p = 4 C p^2 / 2: p = 2 (m g / 4) / C
    const mass = (4 * 20_000) / MOON;
    const still = 20_000 / bekkerCoefficient(1400, 820_000, PAD_DIAMETER);
    for (const sinkage of landerOnSoil(mass, LUNAR, 0)) expect(Math.abs(sinkage / (2 * still) - 1)).toBeLessThan(0.003);
  });

  it('follows energy for other exponents: m g p = 4 C p^(n + 1) / (n + 1)', () => {
    for (const exponent of [0.8, 1.4]) {
      const mass = 4000;
      const soil = { ...LUNAR, exponent };
      const coefficient = bekkerCoefficient(1400, 820_000, PAD_DIAMETER);
      const expected = (((exponent + 1) * mass * MOON) / (4 * coefficient)) ** (1 / exponent);
      for (const sinkage of landerOnSoil(mass, soil, 0)) expect(Math.abs(sinkage / expected - 1)).toBeLessThan(0.01);
    }
  });

  it('stops a drop by strength times area on plastic ground: (4 B - m g) p = m v^2 / 2', () => {
    const strength = 30_000;
    const mass = 3000;
    const lander = ringLander({
      mass,
      inertia: [mass, mass, mass],
      centerHeight: 1.5,
      legCount: 4,
      radius: 3,
      crushForce: 1e9,
      stiffness: 1e8,
      bottomedStiffness: 1e8,
    });
    const bearing = strength * (Math.PI / 4) * 0.5 ** 2;
    const ground = { ...plane(0.7), soil: { kind: 'bearing', stiffness: 1e8, strength } as const };
    const result = touchDown(
      { lander, gravity: MOON, ground, state: { horizontalSpeed: 0, descentRate: 1.5 } },
      { timeLimit: 3 },
    );
    const expected = (mass * 1.5 ** 2) / 2 / (4 * bearing - mass * MOON);
    for (const sinkage of result.sinkages) expect(Math.abs(sinkage / expected - 1)).toBeLessThan(0.002);
    expect(Math.max(...result.strokes)).toBe(0);
  });
});
