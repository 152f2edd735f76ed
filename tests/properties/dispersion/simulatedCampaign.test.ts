import { describe, expect, it } from 'vitest';
import { CAMPAIGN_INPUTS, INPUT_FACTS, type CampaignInput } from '../../../engine/dispersion/campaignInputs.ts';
import { createDrawer, touchdownOf } from '../../../engine/dispersion/campaign.ts';
import { campaignSimulator } from '../../../engine/dispersion/campaignSimulator.ts';
import { summarize } from '../../../engine/dispersion/summary.ts';
import {
  addBatch,
  createTally,
  runBatch,
  type CampaignTally,
  type SimulateTouchdown,
} from '../../../engine/dispersion/tally.ts';
import { checkTouchdown } from '../../../engine/touchdown/index.ts';
import { plainCampaign } from '../../support/plainCampaign.ts';

const campaign = plainCampaign({
  runs: 120,
  inputs: {
    horizontalSpeed: { kind: 'rayleigh', scale: 1.6 },
    descentRate: { kind: 'truncated normal', mean: 2, deviation: 0.5, low: 0.2, high: 4 },
    slopeDeg: { kind: 'uniform', low: 0, high: 15 },
    yawDeg: { kind: 'uniform', low: 0, high: 360 },
    friction: { kind: 'uniform', low: 0.5, high: 1 },
  },
  gear: [
    { value: [], weight: 3 },
    { value: [{ leg: 0, kind: 'soft', factor: 0.5 }], weight: 1 },
  ],
  requirement: { fraction: 0.9, confidence: 0.9, outcomes: ['upright'] },
});

function simulator(): SimulateTouchdown {
  const made = campaignSimulator(campaign.lander);
  if (!made.ok) throw new Error('no simulator');
  return made.value;
}

function runIn(batches: readonly (readonly [first: number, count: number])[]): CampaignTally {
  const tally = createTally(campaign);
  // a simulator each, as workers have
  for (const [first, count] of batches) addBatch(tally, runBatch(campaign, { first, count }, simulator()));
  return tally;
}

describe('a campaign of the simulation', () => {
  const whole = runIn([[0, 120]]);

  it('[DI9] gives the same bits from one worker and from three, in any order', () => {
    const shared = runIn([
      [80, 40],
      [0, 55],
      [55, 25],
    ]);
    expect(shared.measures).toEqual(whole.measures);
    expect(shared.outcomes).toEqual(whole.outcomes);
    expect(summarize(shared)).toEqual(summarize(whole));
    expect(new Set(whole.outcomes).size).toBeGreaterThan(1);
  });

  it('[DI8] has worst cases that run again alone to the same outcome and margin', () => {
    const draw = createDrawer(campaign);
    const worst = summarize(whole)?.worst ?? [];
    expect(worst).toHaveLength(10);
    for (const { index, outcome, leastMargin } of worst) {
      const answer = simulator()(touchdownOf(campaign, draw(index)));
      expect(answer.outcome).toBe(outcome);
      expect(answer.leastMargin.value).toBe(leastMargin);
    }
  });

  it('[DI10] draws nothing that the simulation would refuse: the ends of every input are legal there', () => {
    const middle: { [Input in CampaignInput]?: number } = { descentRate: 1, friction: 0.8, slopeDeg: 5 };
    const soil = { kind: 'bearing', stiffness: 1e6, strength: 1e5 } as const;
    for (const input of CAMPAIGN_INPUTS) {
      const { low, high } = INPUT_FACTS[input];
      for (const value of [low, high]) {
        const touchdown = touchdownOf({ ...campaign, soil }, { values: { ...middle, [input]: value }, gear: [] });
        expect(checkTouchdown(campaign.lander, touchdown), `${input} ${value}`).toEqual([]);
      }
    }
  });
});
