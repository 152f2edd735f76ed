import { describe, expect, it } from 'vitest';
import { hashValue } from '../../../engine/math/hashValue.ts';
import { groundHeight, type Terrain } from '../../../engine/ground/index.ts';
import { createGround, findSite, firstLanding, SITES, type GroundShape, type Site } from '../../../levels/index.ts';

const BARE: GroundShape = {
  width: 400,
  spacing: 0.5,
  friction: 0.7,
  slopes: [{ untilX: 200, slope: 0 }],
  undulation: { rmsHeight: 0, shortest: 4, longest: 40, hurst: 1 },
  craters: { count: 0, leastDiameter: 3, mostDiameter: 8, depthRatio: 0.1 },
  steps: { count: 0, mostHeight: 0.3, width: 1 },
};

function ground(shape: Partial<GroundShape>, seed = 1): Terrain {
  const site: Site = { id: 'test', name: 'Test', summary: 'For tests.', startX: 0, ground: { ...BARE, ...shape } };
  return createGround(site, seed);
}

function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
}

describe('the ground of a site', () => {
  it('[LE3] is the same to the bit for the same seed, and another for another', () => {
    for (const site of SITES) {
      expect(createGround(site, 7).heights).toEqual(createGround(site, 7).heights);
      expect(createGround(site, 7).heights).not.toEqual(createGround(site, 8).heights);
    }
  });

  it('[LE3] reaches from end to end at the stated spacing', () => {
    const { firstX, spacing, heights } = ground({});
    expect(firstX).toBe(-200);
    expect(firstX + spacing * (heights.length - 1)).toBe(200);
    expect(heights.every(Number.isFinite)).toBe(true);
  });

  it('[LE4] follows its base slopes, at height 0 in the middle', () => {
    const slopes = [
      { untilX: -50, slope: -0.1 },
      { untilX: 50, slope: 0.2 },
      { untilX: 200, slope: 0 },
    ];
    const terrain = ground({ slopes });
    expect(groundHeight(terrain, 0)).toBeCloseTo(0, 12);
    expect(groundHeight(terrain, 10)).toBeCloseTo(10 * Math.tan(0.2), 12);
    expect(groundHeight(terrain, 120)).toBeCloseTo(50 * Math.tan(0.2), 12);
    expect(groundHeight(terrain, -150)).toBeCloseTo(-50 * Math.tan(0.2) + 100 * Math.tan(0.1), 10);
  });

  it('[LE4] undulates with the stated height over a long stretch', () => {
    const undulation = { rmsHeight: 0.2, shortest: 5, longest: 40, hurst: 0.9 };
    for (const seed of [1, 2, 3]) {
      const { heights } = ground({ undulation, width: 2000, slopes: [{ untilX: 1000, slope: 0 }] }, seed);
      // 2 km are 50 of the longest waves: neighboring waves are told apart and their powers add to within a few percent
      expect(rootMeanSquare(heights) / 0.2).toBeCloseTo(1, 1);
    }
  });

  it('[LE4] undulates within the stated wavelengths: differences over a short step are small', () => {
    const undulation = { rmsHeight: 0.2, shortest: 20, longest: 40, hurst: 0.9 };
    const { heights, spacing } = ground({ undulation });
    const steps = heights.slice(1).map((height, i) => (height - (heights[i] ?? 0)) / spacing);
    // no slope is steeper than all waves together could make it: Σ 2π aᵢ/λᵢ ≤ 2π √(2n) rms / shortest, n = 4 waves
    const bound = (2 * Math.PI * Math.sqrt(2 * 4) * 0.2) / 20;
    expect(Math.max(...steps.map(Math.abs))).toBeLessThan(bound);
    expect(Math.max(...steps.map(Math.abs))).toBeGreaterThan(bound / 10);
  });

  it('[LE4] has bowls no deeper than stated and ledges no higher', () => {
    const craters = { count: 1, leastDiameter: 6, mostDiameter: 6, depthRatio: 0.1 };
    const depths = Array.from({ length: 20 }, (_, seed) => -Math.min(...ground({ craters }, seed).heights));
    expect(Math.max(...depths)).toBeLessThanOrEqual(0.6);
    expect(Math.max(...depths)).toBeGreaterThan(0.57);
    const steps = { count: 1, mostHeight: 0.3, width: 1 };
    const lasts = Array.from({ length: 50 }, (_, seed) => ground({ steps }, seed).heights.at(-1) ?? 0);
    expect(Math.max(...lasts.map(Math.abs))).toBeLessThanOrEqual(0.3);
    expect(Math.min(...lasts)).toBeLessThan(-0.1);
    expect(Math.max(...lasts)).toBeGreaterThan(0.1);
  });

  it('[LE3] keeps its craters where they are when its undulation changes', () => {
    const craters = { count: 5, leastDiameter: 4, mostDiameter: 8, depthRatio: 0.1 };
    const undulation = { rmsHeight: 0.1, shortest: 5, longest: 40, hurst: 0.9 };
    const both = ground({ craters, undulation }, 9).heights;
    const bowls = ground({ craters }, 9).heights;
    const waves = ground({ undulation }, 9).heights;
    for (const [i, height] of both.entries()) expect(height).toBeCloseTo((bowls[i] ?? 0) + (waves[i] ?? 0), 12);
  });
});

describe('the first landing', () => {
  it('[LE5] starts where the flight lasts half a minute, over ground that the seed alone decides', () => {
    const plan = firstLanding(3);
    expect(plan).toMatchObject({ landerId: 'trivet', siteId: 'saddlers-bench', worldId: 'moon', seed: 3 });
    expect(plan.setup.start.y).toBeGreaterThan(70);
    expect(plan.setup.start.y).toBeLessThan(95);
    expect(hashValue(firstLanding(3).setup)).toBe(hashValue(plan.setup));
    expect(hashValue(firstLanding(4).setup)).not.toBe(hashValue(plan.setup));
    expect(plan.setup.terrain.heights).toEqual(createGround(findSite('saddlers-bench')!, 3).heights);
  });
});
