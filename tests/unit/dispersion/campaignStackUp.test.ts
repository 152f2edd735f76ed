import { describe, expect, it } from 'vitest';
import { campaignStackUp } from '../../../engine/dispersion/campaignStackUp.ts';
import { quantile } from '../../../engine/dispersion/distribution.ts';
import { stackUp } from '../../../engine/dispersion/stackUp.ts';
import { plainCampaign } from '../../support/plainCampaign.ts';
import { plainLander } from '../../support/plainLander.ts';

const SHAPE = { mass: 1500, centerHeight: 2, halfStance: 1.4, inertia: 1500 };
const NORMAL = { kind: 'truncated normal', mean: 1.5, deviation: 0.1, low: 0, high: 3 } as const;

describe('the stack-up of a campaign', () => {
  it('[DI11] is that of its medians and three deviations, over the nearest edge', () => {
    const campaign = plainCampaign({
      inputs: {
        horizontalSpeed: { kind: 'normal', mean: 0.5, deviation: 0.1 },
        descentRate: NORMAL,
        slopeDeg: { kind: 'constant', value: 9 / Math.PI },
        friction: { kind: 'uniform', low: 0.5, high: 1 },
      },
    });
    const expected = stackUp({
      body: { ...SHAPE, oppositeHalfStance: 1.4 },
      condition: { gravity: 1.62422, slope: 0.05, descentRate: 1.5, firstContact: 'together' },
      horizontalSpeed: 0.5,
      limit: 'plastic',
      tolerances: { horizontalSpeed: 0.3, descentRate: 0.3 },
    });
    const found = campaignStackUp(campaign);
    expect(found?.nominalMargin).toBeCloseTo(expected?.nominalMargin ?? NaN, 10);
    // 0.00135 is the tail beyond three deviations to three digits
    expect(found?.worstCase).toBeCloseTo(expected?.worstCase ?? NaN, 4);
    expect(found?.rootSumSquare).toBeCloseTo(expected?.rootSumSquare ?? NaN, 4);
    expect(found?.contributions.map(({ quantity }) => quantity)).toEqual(['horizontalSpeed', 'descentRate']);
  });

  it('[DI11] takes the whole tolerance of the descent rate, more of which is adverse on a slope', () => {
    const descentRate = { kind: 'truncated normal', mean: 1, deviation: 0.5, low: 0.01, high: 4 } as const;
    const inputs = { descentRate, slopeDeg: { kind: 'constant', value: 10 } } as const;
    const found = campaignStackUp(plainCampaign({ inputs }));
    const tolerance = quantile(descentRate, 1 - 0.00135) - quantile(descentRate, 0.5);
    const part = found?.contributions.find(({ quantity }) => quantity === 'descentRate');
    expect(tolerance).toBeGreaterThan(quantile(descentRate, 0.5));
    expect(part?.tolerance).toBeCloseTo(tolerance, 12);
    expect(part?.derivative).toBeLessThan(0);
  });

  it('[DI11] takes the speed down the fall line from a correlated pair', () => {
    const pair = {
      inputs: ['crossSpeed', 'downhillSpeed'],
      means: [5, 0.4],
      deviations: [1, 0.1],
      correlation: 0.3,
    } as const;
    const found = campaignStackUp(plainCampaign({ inputs: { descentRate: NORMAL }, pairs: [pair] }));
    const speed = found?.contributions.find(({ quantity }) => quantity === 'horizontalSpeed');
    expect(speed?.tolerance).toBeCloseTo(0.3, 12);
    expect(speed?.derivative).toBeCloseTo(-1, 9);
  });

  it('[DI11] has none for a lander that does not stand, or on ground that overturns it', () => {
    const fallen = {
      ...plainLander(SHAPE),
      parts: plainLander(SHAPE).parts.map((part) => ({ ...part, center: [9, 0, 2] as const })),
    };
    expect(campaignStackUp(plainCampaign({ lander: fallen }))).toBeUndefined();
    const steep = { descentRate: NORMAL, slopeDeg: { kind: 'constant', value: 50 } } as const;
    expect(campaignStackUp(plainCampaign({ inputs: steep }))).toBeUndefined();
  });
});
