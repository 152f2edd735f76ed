import { describe, expect, it } from 'vitest';
import { inertiaAlong, massProperties } from '../../../engine/lander/index.ts';
import { tripLimit } from '../../../engine/pivot/index.ts';
import { assessLander } from '../../../engine/structure/assessLander.ts';
import { compareUprightLying } from '../../../engine/structure/compare.ts';
import { isLying } from '../../../engine/structure/gearLoad.ts';
import { legAnchor, legMass } from '../../../engine/structure/legMass.ts';
import { layOnSide } from '../../../engine/structure/layOnSide.ts';
import { stanceTrade } from '../../../engine/structure/stanceTrade.ts';
import { landerStance, leastStaticTilt } from '../../../engine/statics/index.ts';
import { findLander } from '../../../levels/index.ts';

const MOON = { gravity: 1.62422 };
const steeple = findLander('steeple')!;
const trivet = findLander('trivet')!;
const bolster = findLander('bolster')!;

describe('upright against lying', () => {
  const compared = compareUprightLying(steeple, MOON);

  it('[SU9] puts each figure on the side that is better, and none on both', () => {
    expect(compared.buys.length).toBeGreaterThan(2);
    expect(compared.costs.length).toBeGreaterThan(1);
    const shown = [...compared.buys, ...compared.costs].map(({ quantity }) => quantity);
    expect(new Set(shown).size).toBe(shown.length);
    for (const { quantity, upright, lying, better } of compared.rows.filter((row) => row.better !== 'neither')) {
      const isMoreLying = (lying ?? -Infinity) > (upright ?? -Infinity);
      const isLessWanted = /height|mass|shift|moment|utilization/.test(quantity);
      expect(isMoreLying !== isLessWanted ? 'lying' : 'upright', quantity).toBe(better);
    }
  });

  it('[SU9] says what a tall lander gains: a lower center, a higher trip limit and static tilt', () => {
    const gained = compared.buys.map(({ quantity }) => quantity);
    expect(gained).toEqual(expect.arrayContaining(['trip limit, plastic', 'static tilt', 'center height']));
  });

  it('[SU9] does not say the same of a squat one', () => {
    const lost = compareUprightLying(trivet, MOON).costs.map(({ quantity }) => quantity);
    expect(lost).toEqual(expect.arrayContaining(['trip limit, plastic', 'static tilt']));
  });

  it('[SU9] takes its limits from the closed form over the nearest edge, on both sides', () => {
    for (const lander of [steeple, layOnSide(steeple)]) {
      const assessed = assessLander(lander, MOON);
      const bulk = massProperties(lander);
      const stance = landerStance(lander);
      if (stance.kind !== 'stands') throw new Error('does not stand');
      const { edge } = leastStaticTilt(stance);
      const body = {
        mass: bulk.mass,
        halfStance: edge.distance,
        centerHeight: bulk.center[2],
        inertia: inertiaAlong(bulk.inertia, edge.axis),
      };
      const limit = tripLimit(body, { gravity: MOON.gravity, slope: 0 });
      const overNearest = limit.kind === 'limit' ? limit.plastic.horizontal : Number.NaN;
      expect(assessed.standing?.plastic).toBeLessThanOrEqual(overNearest * (1 + 1e-12));
      expect(assessed.standing?.plastic).toBeGreaterThan(0.9 * overNearest);
    }
  });

  it('[SU9] gives the inertia about the tip edge as that about the center of mass and m (b² + h²)', () => {
    const bulk = massProperties(steeple);
    const stance = landerStance(steeple);
    if (stance.kind !== 'stands') throw new Error('does not stand');
    const { edge } = leastStaticTilt(stance);
    const arm = edge.distance ** 2 + bulk.center[2] ** 2;
    const row = compared.rows.find(({ quantity }) => quantity === 'inertia about the tip edge');
    expect((row?.upright ?? 0) / (inertiaAlong(bulk.inertia, edge.axis) + bulk.mass * arm)).toBeCloseTo(1, 12);
  });

  it('[SU9] names the loss of the main engine for ascent', () => {
    expect(compared.consequences.find(({ id }) => id === 'ascent')?.text).toMatch(/main engine .* lift off/);
  });

  it('[SU9] knows which of the landers of the examples lies', () => {
    expect([trivet, steeple, bolster].map(isLying)).toEqual([false, false, true]);
    expect(isLying(layOnSide(steeple))).toBe(true);
    expect(assessLander(bolster, MOON).gear.cases.map(({ name }) => name)).toContain('ends only');
  });

  it('[SU9] has no limit where the slope overturns the lander', () => {
    const steep = compareUprightLying(steeple, { ...MOON, slope: 0.6 });
    expect(steep.upright.standing?.plastic).toBeUndefined();
    expect(steep.rows.find(({ quantity }) => quantity === 'trip limit, plastic')?.better).toBe('lying');
  });
});

describe('the mass of legs', () => {
  it('[SU6] is that of the anchor at the anchor, by both laws', () => {
    const anchor = { mass: 40, force: 20_000, length: 2 };
    expect(legMass(anchor, 20_000, 2)).toEqual({ strength: 40, buckling: 40, isInRange: true });
  });

  it('[SU6] grows as F ℓ by strength and as √F ℓ² by buckling', () => {
    const anchor = { mass: 40, force: 20_000, length: 2 };
    expect(legMass(anchor, 30_000, 3)).toMatchObject({ strength: 40 * 1.5 * 1.5, isInRange: true });
    expect(legMass(anchor, 30_000, 3).buckling).toBeCloseTo(40 * Math.sqrt(1.5) * 2.25, 10);
    expect(legMass(anchor, 20_000, 4.1).isInRange).toBe(false);
    expect(legMass(anchor, 9000, 2).isInRange).toBe(false);
  });

  it('[SU6] is anchored at the part named legs, or at a stated share of the lander', () => {
    expect(legAnchor(steeple, massProperties(steeple).mass).mass).toBeCloseTo(900 / 6, 10);
    const bare = { ...steeple, parts: steeple.parts.filter(({ name }) => name !== 'legs') };
    expect(legAnchor(bare, 10_000).mass).toBeCloseTo(50, 10);
  });
});

describe('the trade of stance', () => {
  it('[SU10] gives the lander itself at factor one, and both more limit and more leg mass the wider it stands', () => {
    const points = stanceTrade(steeple, MOON, [0.8, 1, 1.2, 1.5]);
    expect(points[1]?.standing).toEqual(assessLander(steeple, MOON).standing);
    const limits = points.map(({ standing }) => standing?.plastic ?? Number.NaN);
    const masses = points.map(({ legMass: mass }) => mass.strength);
    expect(limits).toEqual(limits.toSorted((a, b) => a - b));
    expect(masses).toEqual(masses.toSorted((a, b) => a - b));
    expect((limits[3] ?? 0) / (limits[0] ?? 1)).toBeGreaterThan(1.5);
  });

  it('[SU10] refuses a stance of nothing', () => {
    for (const factor of [0, -1, Number.NaN, Infinity])
      expect(() => stanceTrade(steeple, MOON, [factor])).toThrow(/stance factor/);
  });
});
