import { describe, expect, it } from 'vitest';
import {
  drawMap,
  estimateView,
  feetOf,
  firstGuess,
  ORBITAL_SURVEY,
  realignInertialUnit,
  START_SIGMA,
  stepEstimate,
} from '../../../engine/estimate/index.ts';
import { broadRise, mapRise, mapVariance } from '../../../engine/estimate/mapGround.ts';
import { ANGLE, BIAS_ACROSS, BIAS_RATE, STATES } from '../../../engine/estimate/state.ts';
import { groundHeight } from '../../../engine/ground/index.ts';
import { INERTIAL_UNIT } from '../../../engine/sensors/index.ts';
import { createGround, findSite, SITES } from '../../../levels/index.ts';
import { meanSquareBounds } from '../../support/chiSquare.ts';
import { believe } from '../../support/believedDescent.ts';
import { evenGround, MOON } from '../../support/dropLander.ts';
import { kinematicState, LEVEL, livelyDescent, still } from '../../support/kinematicTruth.ts';
import { HOVER, plainEstimate, readingsOf, TRUE_MAP } from '../../support/plainEstimate.ts';

describe('a map', () => {
  it('[ES8] of level ground is off at its posts by the stated error', () => {
    const { terrain } = drawMap(LEVEL, 3, { postSpacing: 10, sigma: 0.4 });
    expect(terrain.heights.length).toBe(101);
    const square = terrain.heights.reduce((sum, height) => sum + (height / 0.4) ** 2, 0) / terrain.heights.length;
    const [low, high] = meanSquareBounds(terrain.heights.length);
    expect(square).toBeGreaterThan(low);
    expect(square).toBeLessThan(high);
  });

  it('[ES8] follows a slope, and states what it leaves out', () => {
    const exact = drawMap(evenGround(0.1), 3, { postSpacing: 10, sigma: 0 });
    for (const x of [-150, -3, 88]) expect(groundHeight(exact.terrain, x)).toBeCloseTo(x * Math.tan(0.1), 9);
    // a saw of 2 m from tooth to tooth and 0.3 m up and down is smaller than the posts: uniform, variance 0.3²/12, about its mean; both ends of 800 m add 0.0003
    const heights = Array.from({ length: 40_001 }, (_, i) => 0.15 * (1 - Math.abs((i % 100) - 50) / 25));
    const saw = drawMap({ firstX: 0, spacing: 0.02, heights, friction: 1 }, 3, { postSpacing: 10, sigma: 0 });
    expect(saw.sigma).toBeCloseTo(0.3 / Math.sqrt(12), 3);
  });

  it.each(SITES.map(({ id }) => id))('[ES8] states an error that its posts bear out over ten grounds: %s', (id) => {
    let square = 0;
    let stated = 0;
    for (let seed = 1; seed <= 10; seed++) {
      const terrain = createGround(findSite(id)!, seed);
      const map = drawMap(terrain, seed, ORBITAL_SURVEY);
      let sum = 0;
      for (const [i, height] of terrain.heights.entries())
        sum += (height - groundHeight(map.terrain, terrain.firstX + i * terrain.spacing)) ** 2;
      square += sum / terrain.heights.length;
      stated += map.sigma ** 2;
    }
    // between posts a straight line averages their errors: the true figure lies below the stated one, by a third of the posts' share at most
    expect(square / stated).toBeGreaterThan(0.6);
    expect(square / stated).toBeLessThan(1.1);
  });

  it('[ES8] rises as its pieces do, and not beyond its ends', () => {
    const map = { ...TRUE_MAP, terrain: { firstX: 0, spacing: 10, heights: [0, 2, 1], friction: 1 } };
    const rises = [-5, 5, 15, 20, 25].map((x) => mapRise(map, x));
    for (const [i, rise] of [0, 0.2, -0.1, 0, 0].entries()) expect(rises[i]).toBeCloseTo(rise, 12);
    // from 10 m left to 10 m right
    expect(broadRise(map, 10)).toBeCloseTo(0.05, 12);
  });

  it('[ES8] is the more uncertain the farther apart two places are, up to two unrelated errors', () => {
    const map = { ...TRUE_MAP, sigma: 0.3, correlation: 10 };
    expect(mapVariance(map, 0)).toBe(0);
    expect(mapVariance(map, -5)).toBeCloseTo(0.09, 12);
    expect(mapVariance(map, 50)).toBeCloseTo(0.18, 12);
  });
});

/** Height over a slope of 0.2 rad of a foot 2 m below a center of mass 50 m up that leans by 0.5 rad to the left. */
function footOverSlope(across: number): number {
  const x = across * Math.cos(0.5) + 2 * Math.sin(0.5);
  return 50 + across * Math.sin(0.5) - 2 * Math.cos(0.5) - x * Math.tan(0.2);
}

describe('the estimate', () => {
  it('[ES8] starts off by what it says, over seeds', () => {
    const seeds = 500;
    const [low, high] = meanSquareBounds(seeds);
    for (const name of ['x', 'height', 'vx', 'vy', 'angle'] as const) {
      let sum = 0;
      for (let seed = 0; seed < seeds; seed++)
        sum += ((firstGuess(HOVER, START_SIGMA, seed)[name] - HOVER[name]) / START_SIGMA[name]) ** 2;
      expect(sum / seeds).toBeGreaterThan(low);
      expect(sum / seeds).toBeLessThan(high);
    }
  });

  it('[ES8] follows the ground of the map, and draws the lander over it', () => {
    const slope = Math.tan(0.1);
    const map = { ...TRUE_MAP, terrain: evenGround(0.1) };
    const estimate = plainEstimate({ map, start: { ...HOVER, vx: 3 } });
    for (let tick = 1; tick <= 600; tick++)
      stepEstimate(estimate, readingsOf({ inertialUnit: [0, MOON, 0] }, tick), {});
    const { x, y, height } = estimateView(estimate, readingsOf({}, 0), {});
    expect(x).toBeCloseTo(30, 9);
    expect(height).toBeCloseTo(50 - 30 * slope, 9);
    expect(y).toBeCloseTo(50, 9);
  });

  it('tells the clearance of the lowest foot over the map', () => {
    const angle = 0.2;
    const feet = feetOf(kinematicState(0, still(50, 0.1)));
    const { clearance } = estimateView(plainEstimate({ feet, start: { ...HOVER, angle } }), readingsOf({}, 0), {});
    // feet 2 m below and 1.5 m to each side of the center
    expect(clearance).toBeCloseTo(50 - 2 * Math.cos(angle) - 1.5 * Math.sin(angle), 9);
  });

  it('tells it over a slope, at the place of each foot', () => {
    const feet = feetOf(kinematicState(0, still(50)));
    const map = { ...TRUE_MAP, terrain: evenGround(0.2) };
    const { clearance } = estimateView(
      plainEstimate({ feet, map, start: { ...HOVER, angle: 0.5 } }),
      readingsOf({}, 0),
      {},
    );
    expect(clearance).toBeCloseTo(Math.min(...[1.5, -1.5].map(footOverSlope)), 9);
  });

  it('[ES9] once re-aligned has forgotten the unit, and learns its angle again in some seconds', () => {
    const descent = { truth: livelyDescent(900), terrain: LEVEL };
    const seen = new Map<string, { mean: number[]; sigmas: number[]; angle: number }>();
    believe(descent, { seed: 3, map: TRUE_MAP }, ({ estimate, state }) => {
      const note = (when: string): void => {
        const sigmas = Array.from(estimate.mean, (_, place) => Math.sqrt(estimate.covariance[place * (STATES + 1)]!));
        seen.set(when, { mean: [...estimate.mean], sigmas, angle: state.angle });
      };
      if (state.tick === 600) {
        note('before');
        realignInertialUnit(estimate);
        note('after');
      }
      if (state.tick === 900) note('later');
    });
    const [before, after, later] = ['before', 'after', 'later'].map((when) => seen.get(when)!);
    expect(before!.sigmas[ANGLE]).toBeLessThan(START_SIGMA.angle / 10);
    expect(after!.sigmas[ANGLE]).toBeCloseTo(START_SIGMA.angle, 12);
    expect(after!.sigmas[BIAS_ACROSS]).toBeCloseTo(INERTIAL_UNIT.forceBias, 12);
    expect(after!.mean[BIAS_RATE]).toBe(0);
    expect(before!.mean[BIAS_RATE]).not.toBe(0);
    expect(later!.sigmas[ANGLE]).toBeLessThan(START_SIGMA.angle / 10);
    expect(Math.abs(later!.mean[ANGLE]! - later!.angle)).toBeLessThan(4 * later!.sigmas[ANGLE]!);
  });
});
