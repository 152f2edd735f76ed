import { describe, expect, it } from 'vitest';
import {
  createVarianceDrawer,
  factorShares,
  planVariance,
  runVarianceBatch,
} from '../../../engine/dispersion/varianceCampaign.ts';
import type { SimulateTouchdown } from '../../../engine/dispersion/tally.ts';
import { answerByClosedForm, plainCampaign } from '../../support/plainCampaign.ts';

/** An answer that is linear in three inputs with variances 9 : 4 : 1, so the shares are 9/14, 4/14, 1/14. */
const linear: SimulateTouchdown = (touchdown) => ({
  ...answerByClosedForm(touchdown),
  leastMargin: {
    value: 3 * touchdown.state.horizontalSpeed + 2 * touchdown.state.descentRate + touchdown.ground.friction,
    time: 0,
  },
});

const UNIFORM = { kind: 'uniform', low: 1, high: 2 } as const;
const campaign = plainCampaign({ inputs: { horizontalSpeed: UNIFORM, descentRate: UNIFORM, friction: UNIFORM } });

describe('a variance design of a campaign', () => {
  it('[DI12] shares the variance of a linear answer as the squares of its coefficients', () => {
    const plan = planVariance(campaign, 4096);
    expect(plan.runs).toBe(4096 * 5);
    const shares = factorShares(plan, runVarianceBatch(plan, { first: 0, count: plan.runs }, linear));
    expect(shares.map(({ name }) => name)).toEqual(['horizontalSpeed', 'descentRate', 'friction']);
    for (const [i, expected] of [9 / 14, 4 / 14, 1 / 14].entries()) {
      expect(shares[i]?.leastMargin?.first).toBeCloseTo(expected, 2);
      expect(shares[i]?.leastMargin?.total).toBeCloseTo(expected, 2);
    }
  });

  it('[DI12] gives the same answers whole or in batches', () => {
    const plan = planVariance(campaign, 16);
    const whole = runVarianceBatch(plan, { first: 0, count: plan.runs }, linear);
    const parts = [0, 33, 66].map((first) =>
      runVarianceBatch(plan, { first, count: Math.min(33, plan.runs - first) }, linear),
    );
    expect(Float64Array.from(parts.flatMap((part) => [...part]))).toEqual(whole);
  });

  it('[DI12] takes both values of a correlated pair from the same place', () => {
    const pair = {
      inputs: ['downhillSpeed', 'crossSpeed'],
      means: [0, 0],
      deviations: [1, 1],
      correlation: 0.9,
    } as const;
    const paired = plainCampaign({
      inputs: { descentRate: UNIFORM, friction: { kind: 'constant', value: 1 } },
      pairs: [pair],
    });
    const plan = planVariance(paired, 8);
    expect(plan.names).toEqual(['downhillSpeed + crossSpeed', 'descentRate']);
    const draw = createVarianceDrawer(plan);
    const [a, b, withPair, withRate] = [0, 1, 2, 3].map((run) => draw(run).values);
    expect(withPair).toEqual({ ...a, downhillSpeed: b?.downhillSpeed, crossSpeed: b?.crossSpeed });
    expect(withRate).toEqual({ ...a, descentRate: b?.descentRate });
  });

  it('[DI12] has no shares of an answer that never varies', () => {
    const plan = planVariance(campaign, 4);
    const shares = factorShares(plan, new Float64Array(2 * plan.runs).fill(1));
    expect(shares[0]?.leastMargin).toBeUndefined();
    expect(shares[0]?.upright).toBeUndefined();
  });

  it('refuses a number of base points that is no power of two', () => {
    for (const points of [0, 1, 100, Number.NaN, 2.5])
      expect(() => planVariance(campaign, points)).toThrow(/power of 2/);
  });
});
