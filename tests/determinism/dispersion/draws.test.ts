import { describe, expect, it } from 'vitest';
import { createDrawer } from '../../../engine/dispersion/campaign.ts';
import { SAMPLING_METHODS, type SamplingMethod } from '../../../engine/dispersion/pointSet.ts';
import { hashFloats } from '../../../engine/math/hash.ts';
import { plainCampaign } from '../../support/plainCampaign.ts';

/**
 * Golden hashes of the first 256 cases: our own output, pinned so that a change of the draws is noticed. A campaign that was
 * run before would no longer repeat.
 */
const GOLDEN: { readonly [Method in SamplingMethod]: string } = {
  sobol: 'a167584b614e01a9',
  latin: '7098858fb6dd9b48',
  plain: '00a3da165780dbc8',
};

describe('what a campaign draws', () => {
  it.each(SAMPLING_METHODS)('has not changed since it was pinned: %s', (method) => {
    const draw = createDrawer(plainCampaign({ method, runs: 256, seed: 2024 }));
    const numbers = Array.from({ length: 256 }, (_, i) => {
      const { horizontalSpeed = NaN, descentRate = NaN, slopeDeg = NaN } = draw(i).values;
      return [horizontalSpeed, descentRate, slopeDeg];
    }).flat();
    expect(new Set(numbers).size).toBe(768);
    expect(hashFloats(numbers)).toBe(GOLDEN[method]);
  });
});
