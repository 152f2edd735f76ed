import { describe, expect, it } from 'vitest';
import { arrivalOdds, type ArrivalBelief } from '../../../engine/estimate/index.ts';
import { nextNormal, seedRandom } from '../../../engine/math/random.ts';

const SIDE = { speed: 1.5, sigma: 0, perRadian: 0 };
const PLAIN: ArrivalBelief = { vx: 0, vxSigma: 1, angleSigma: 0, covariance: 0, right: SIDE, left: SIDE };

describe('P(stay upright) before contact', () => {
  // standard normal table: Φ(1.5) = 0.9331927987, Φ(1) = 0.8413447461, Φ(2) = 0.9772498681
  it('[ES7] is the share of a normal speed between both limits', () => {
    expect(arrivalOdds(PLAIN)).toBeCloseTo(2 * 0.9331927987 - 1, 9);
    expect(arrivalOdds({ ...PLAIN, vx: 0.5 })).toBeCloseTo(0.8413447461 - (1 - 0.9772498681), 9);
    expect(arrivalOdds({ ...PLAIN, vx: -0.5 })).toBeCloseTo(0.8413447461 - (1 - 0.9772498681), 9);
  });

  it('[ES7] takes the limit of the side to which the lander travels', () => {
    const left = { ...SIDE, speed: 20 };
    expect(arrivalOdds({ ...PLAIN, vx: -3, vxSigma: 0.5, left })).toBeCloseTo(1, 9);
    expect(arrivalOdds({ ...PLAIN, vx: 3, vxSigma: 0.5, left })).toBeCloseTo(1 - 0.998650102, 9);
  });

  it('[ES7] is certain where nothing is uncertain, and where no speed tips', () => {
    const sure = { ...PLAIN, vxSigma: 0 };
    expect(arrivalOdds({ ...sure, vx: 1.4 })).toBe(1);
    expect(arrivalOdds({ ...sure, vx: 1.6 })).toBe(0);
    expect(arrivalOdds({ ...sure, vx: -1.6 })).toBe(0);
    const never = { ...SIDE, speed: Infinity };
    expect(arrivalOdds({ ...PLAIN, vx: 9, right: never, left: never })).toBe(1);
  });

  it('[ES7] is none where it tips at rest either way', () => {
    const falls = { ...SIDE, speed: -1 };
    expect(arrivalOdds({ ...PLAIN, vxSigma: 0.01, right: falls, left: falls })).toBe(0);
  });

  it.each([
    { vx: 0.4, vxSigma: 0.5, angleSigma: 0.05, covariance: 0.015, slopes: [8, -8] },
    { vx: -1.2, vxSigma: 0.3, angleSigma: 0.02, covariance: -0.004, slopes: [-5, 5] },
    { vx: 1, vxSigma: 0.2, angleSigma: 0.08, covariance: 0.012, slopes: [3, 6] },
  ])(
    '[ES7] is what drawing velocity, angle and limits gives: %j',
    ({ vx, vxSigma, angleSigma, covariance, slopes }) => {
      const right = { speed: 1.5, sigma: 0.2, perRadian: slopes[0]! };
      const left = { speed: 2, sigma: 0.3, perRadian: slopes[1]! };
      const random = seedRandom(7);
      const draws = 200_000;
      const correlation = covariance / (vxSigma * angleSigma);
      let upright = 0;
      for (let i = 0; i < draws; i++) {
        const common = nextNormal(random);
        const v = vx + vxSigma * common;
        const angle = angleSigma * (correlation * common + Math.sqrt(1 - correlation ** 2) * nextNormal(random));
        const most = right.speed + right.perRadian * angle + right.sigma * nextNormal(random);
        const least = -(left.speed + left.perRadian * angle + left.sigma * nextNormal(random));
        if (v > least && v < most) upright++;
      }
      const odds = arrivalOdds({ vx, vxSigma, angleSigma, covariance, right, left });
      expect(odds).toBeGreaterThan(0.5);
      expect(odds).toBeLessThan(0.999);
      // four binomial standard errors
      expect(Math.abs(upright / draws - odds)).toBeLessThan(4 * Math.sqrt((odds * (1 - odds)) / draws));
    },
  );
});
