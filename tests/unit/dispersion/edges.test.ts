import { describe, expect, it } from 'vitest';
import { quantile } from '../../../engine/dispersion/distribution.ts';
import { parseCampaign } from '../../../engine/dispersion/parseCampaign.ts';
import { accept } from '../../../engine/result.ts';
import { plainLander } from '../../support/plainLander.ts';

function document(descentRate: number): object {
  return {
    format: 'kilter-campaign/1',
    title: 'Ends',
    lander: 'plain',
    world: 'moon',
    method: 'plain',
    runs: 1,
    seed: 0,
    inputs: { descentRate: { kind: 'discrete', choices: [{ value: descentRate, weight: 1 }] }, friction: 0.5 },
  };
}

function isRead(descentRate: number): boolean {
  return parseCampaign(document(descentRate), () => accept(plainLander())).ok;
}

describe('edges of what a campaign draws', () => {
  it('[DI1] a normal cut off evenly about a mean that is not 0 stays even about it', () => {
    const even = { kind: 'truncated normal', mean: 2, deviation: 1, low: 1, high: 3 } as const;
    expect(quantile(even, 0.5)).toBeCloseTo(2, 12);
    for (const u of [0.01, 0.2, 0.4]) expect(quantile(even, u) + quantile(even, 1 - u)).toBeCloseTo(4, 12);
  });

  it('[DI10] the very ends of a range may be drawn, nothing beyond them', () => {
    expect([0, 100, -1e-9, 100.001].map(isRead)).toEqual([true, true, false, false]);
  });
});
