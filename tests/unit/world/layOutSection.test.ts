import { describe, expect, it } from 'vitest';
import { inertiaAbout, massProperties, type Lander } from '../../../engine/lander/index.ts';
import { layOutSection } from '../../../engine/world/layOutSection.ts';
import { readMassTable } from '../../../engine/world/massTable.ts';
import { drainTanks } from '../../../engine/lander/drainTanks.ts';
import { createHullBody } from '../../../engine/world/hullBody.ts';
import { findLander } from '../../../levels/index.ts';
import { evenGround } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

const TRIVET = findLander('trivet')!;

function bulkOf(lander: Lander, usable: number, left: number) {
  const bulk = { mass: 0, centerHeight: 0, inertia: 0 };
  readMassTable(layOutSection(lander, usable).masses, left, bulk);
  return bulk;
}

describe('the section of a lander', () => {
  it('[PL21] stands on the least distance of its footprint and weighs what its file says', () => {
    // four feet at radius 2.14: the edges are at 2.14 cos 45°
    expect(layOutSection(TRIVET, 100).halfStance).toBeCloseTo(2.14 * Math.SQRT1_2, 12);
    const { mass, center, inertia } = massProperties(TRIVET);
    const bulk = bulkOf(TRIVET, 100, 100);
    expect(bulk.mass).toBeCloseTo(mass, 9);
    expect(bulk.centerHeight).toBeCloseTo(center[2], 12);
    expect(bulk.inertia).toBeCloseTo(inertiaAbout(inertia, 0), 6);
  });

  it('[PL21] is the view along the edge nearest to its center of mass, which need not stand amid the feet', () => {
    const plain = plainLander();
    const parts = plain.parts.map((part) => ({ ...part, center: [0.2, 0.5, 2] as const }));
    const { azimuth, halfStance, hull } = layOutSection({ ...plain, parts }, 0);
    // edges at 1.5 m: 1.3 m away along +x, 1 m along +y, and the hull from -1 to 1 m along y
    expect(azimuth).toBeCloseTo(Math.PI / 2, 12);
    expect(halfStance).toBeCloseTo(1, 12);
    expect(Math.min(...hull.map(([x]) => x))).toBeCloseTo(-1.5, 12);
    expect(Math.max(...hull.map(([x]) => x))).toBeCloseTo(0.5, 12);
  });

  it('[PL21] follows its mass properties within 1e-5 while the tanks drain', () => {
    for (const left of [0, 0.3, 17.77, 55.5, 99.99]) {
      const bulk = bulkOf(TRIVET, 100, left);
      const exact = massProperties(drainTanks(TRIVET, massProperties(TRIVET).mass - 100 + left));
      expect(bulk.mass / exact.mass).toBeCloseTo(1, 12);
      expect(Math.abs(bulk.centerHeight / exact.center[2] - 1)).toBeLessThan(1e-5);
      expect(Math.abs(bulk.inertia / inertiaAbout(exact.inertia, 0) - 1)).toBeLessThan(1e-5);
    }
  });

  it('[PL21] refuses more propellant than its tanks hold', () => {
    expect(() => layOutSection(TRIVET, 600)).toThrow(/at most what the tanks hold/);
  });

  it('[PL3] keeps every corner of a hull of more corners than the library takes, and gives a thin one an area', () => {
    const round = Array.from({ length: 24 }, (_, i) => {
      const angle = (i / 24) * 2 * Math.PI;
      return [-1, 1].map((y) => [1.2 * Math.cos(angle), y, 2 + 1.2 * Math.sin(angle)] as const);
    }).flat();
    // wider along y, so that the section is the one across x
    const lander = plainLander({ hull: round });
    const wide = lander.legs.map((leg) => ({
      ...leg,
      footpad: [leg.footpad[0], leg.footpad[1] * 1.2, 0] as const,
      hip: [leg.hip[0], leg.hip[1] * 1.2, 1] as const,
    }));
    const section = layOutSection({ ...lander, legs: wide }, 0);
    expect(section.hull).toHaveLength(24);
    const bulk = { mass: 2000, centerHeight: 2, inertia: 3000 };
    const motion = { x: 0, y: 50, angle: 0, vx: 0, vy: 0, rate: 0 };
    const { body } = createHullBody(evenGround(), section.hull, bulk, motion);
    let corners = 0;
    for (let fixture = body.getFixtureList(); fixture; fixture = fixture.getNext()) {
      const shape = fixture.getShape() as unknown as { readonly m_count: number };
      expect(shape.m_count).toBeLessThanOrEqual(12);
      corners += shape.m_count;
    }
    // three fans: each cut adds its two ends once more
    expect(corners).toBe(24 + 2 * 2);
    const needle = plainLander({
      hull: [
        [0, 0, 1],
        [0, 0, 3],
        [0, 0, 2],
        [0, 0, 2.5],
      ],
    });
    expect(layOutSection(needle, 0).hull.length).toBeGreaterThanOrEqual(4);
  });
});
