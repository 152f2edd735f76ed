import { describe, expect, it } from 'vitest';
import { createDrawer, touchdownOf, type Campaign } from '../../../engine/dispersion/campaign.ts';
import { summarize, type CampaignSummary } from '../../../engine/dispersion/summary.ts';
import { addBatch, createTally, runBatch } from '../../../engine/dispersion/tally.ts';
import { answerByClosedForm, plainCampaign } from '../../support/plainCampaign.ts';

function run(campaign: Campaign, firsts: readonly number[], size: number): CampaignSummary {
  const tally = createTally(campaign);
  for (const first of firsts) {
    const count = Math.min(size, campaign.runs - first);
    addBatch(tally, runBatch(campaign, { first, count }, answerByClosedForm));
  }
  const summary = summarize(tally);
  if (summary === undefined) throw new Error('nothing ran');
  return summary;
}

const SLOW = { kind: 'uniform', low: 0, high: 0.2 } as const;
const REQUIREMENT = { fraction: 0.9, confidence: 0.95, outcomes: ['upright'] } as const;

describe('the summary of a campaign', () => {
  const campaign = plainCampaign({ requirement: REQUIREMENT });
  const summary = run(campaign, [0], 2000);

  it('[DI9] is the same to the bit however the cases were shared out and in whatever order they came back', () => {
    const firsts = Array.from({ length: 20 }, (_, i) => i * 100);
    expect(run(campaign, firsts.toReversed(), 100)).toEqual(summary);
    expect(run(campaign, [700, 0, 1400], 700)).toEqual(summary);
  });

  it('[DI9] counts every case once and its fractions add up to one', () => {
    expect(summary.outcomes.reduce((sum, { count }) => sum + count, 0)).toBe(2000);
    expect(summary.outcomes.reduce((sum, { fraction }) => sum + fraction, 0)).toBeCloseTo(1, 14);
    const tipped = summary.outcomes.find(({ outcome }) => outcome === 'tipped downhill');
    expect(tipped?.count).toBeGreaterThan(20);
    expect(tipped?.wilson95.low).toBeLessThan(tipped?.fraction ?? 0);
    expect(tipped?.clopperPearson95.high).toBeGreaterThan(tipped?.fraction ?? 1);
  });

  it('[DI8] lists the ten worst cases so that each can be run again by its index', () => {
    expect(summary.worst).toHaveLength(10);
    const draw = createDrawer(campaign);
    for (const worst of summary.worst) {
      const drawn = draw(worst.index);
      expect(drawn).toEqual({ values: worst.values, gear: worst.gear });
      const answer = answerByClosedForm(touchdownOf(campaign, drawn));
      expect(answer.outcome).toBe(worst.outcome);
      expect(answer.leastMargin.value).toBe(worst.leastMargin);
    }
    const margins = summary.worst.map(({ leastMargin }) => leastMargin);
    expect(margins).toEqual(margins.toSorted((a, b) => a - b));
    expect(summary.worst.every(({ isCutOff }) => isCutOff)).toBe(true);
  });

  it('orders quantiles and puts the bound beyond the quantile it bounds, on the adverse side', () => {
    // slow enough that none tips
    const still = run(plainCampaign({ inputs: { ...campaign.inputs, horizontalSpeed: SLOW } }), [0], 2000);
    for (const { measure, adverse, least, quantiles, greatest, bound, cutOff } of still.measures) {
      expect(cutOff).toBe(0);
      const row = [least, ...quantiles.map(({ value }) => value), greatest].map((value) => value ?? Number.NaN);
      expect(row, measure).toEqual(row.toSorted((a, b) => a - b));
      const quoted = quantiles.find(({ share }) => share === (adverse === 'low' ? 0.01 : 0.99))?.value ?? Number.NaN;
      const value = bound?.value ?? Number.NaN;
      expect(adverse === 'low' ? value <= quoted : value >= quoted, measure).toBe(true);
    }
  });

  it('names what drives the margin, strongest first and with its sign', () => {
    expect(summary.drivers[0]).toMatchObject({ input: 'horizontalSpeed' });
    expect(summary.drivers[0]?.correlation).toBeLessThan(-0.8);
    expect(summary.drivers.map(({ input }) => input).toSorted()).toEqual([
      'descentRate',
      'horizontalSpeed',
      'slopeDeg',
    ]);
  });

  it('judges its requirement on the outcomes that count', () => {
    expect(summary.requirement?.verdict.tally.runs).toBe(2000);
    const anything = { ...REQUIREMENT, outcomes: ['upright', 'tipped downhill'] } as const;
    expect(run(plainCampaign({ requirement: anything }), [0], 2000).requirement?.verdict.kind).toBe('met');
    const strict = { ...REQUIREMENT, fraction: 0.999 };
    expect(run(plainCampaign({ requirement: strict }), [0], 2000).requirement?.verdict.kind).toBe('not met');
  });

  it('says that it is partial until every case is in', () => {
    expect(summary).toMatchObject({ isPartial: false, asked: 2000, done: 2000, independent: true });
    expect(run(campaign, [500], 500)).toMatchObject({ isPartial: true, asked: 2000, done: 500 });
    expect(summarize(createTally(campaign))).toBeUndefined();
  });

  it('refuses a batch that comes twice or from outside', () => {
    const tally = createTally(campaign);
    const batch = runBatch(campaign, { first: 10, count: 5 }, answerByClosedForm);
    addBatch(tally, batch);
    expect(() => addBatch(tally, batch)).toThrow(/entered before/);
    expect(() => addBatch(tally, { ...batch, first: 1998 })).toThrow(/no cases from 1998/);
  });
});
