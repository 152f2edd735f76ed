import { describe, expect, it } from 'vitest';

import { caseRows } from '../../../engine/dispersion/caseRows.ts';
import { valueOfRank, worstKnown } from '../../../engine/dispersion/censoredSample.ts';
import { summarize, type MeasureSummary } from '../../../engine/dispersion/summary.ts';
import { addBatch, createTally, runBatch, type SimulateTouchdown } from '../../../engine/dispersion/tally.ts';
import type { TouchdownOutcome } from '../../../engine/touchdown/touchdownCase.ts';
import { answerByClosedForm, plainCampaign } from '../../support/plainCampaign.ts';

const known = Float64Array.of(1, 2, 3);

describe('a sample of which some is cut off', () => {
  it('[DI6] ranks what is cut off at the adverse end', () => {
    const low = { known, cutOff: 2, adverse: 'low' } as const;
    const high = { known, cutOff: 2, adverse: 'high' } as const;
    const ranks = [1, 2, 3, 4, 5];
    expect(ranks.map((rank) => valueOfRank(low, rank))).toEqual([undefined, undefined, 1, 2, 3]);
    expect(ranks.map((rank) => valueOfRank(high, rank))).toEqual([1, 2, 3, undefined, undefined]);
    expect([worstKnown(low), worstKnown(high)]).toEqual([1, 3]);
    expect(worstKnown({ ...low, known: Float64Array.of() })).toBeUndefined();
  });
});

/** Case i answers i in every measure, but a fallen one what it had at its verdict: far better than that. */
function measured(runs: number, outcomeOf: (index: number) => TouchdownOutcome): readonly MeasureSummary[] {
  return summaryOf(runs, outcomeOf)?.measures ?? [];
}
function summaryOf(runs: number, outcomeOf: (index: number) => TouchdownOutcome): ReturnType<typeof summarize> {
  const campaign = plainCampaign({ runs });
  const tally = createTally(campaign);
  addBatch(tally, runBatch(campaign, { first: 0, count: runs }, answerer(outcomeOf)));
  return summarize(tally);
}
function answerer(outcomeOf: (index: number) => TouchdownOutcome): SimulateTouchdown {
  let index = -1;
  return (touchdown) => {
    index++;
    const outcome = outcomeOf(index);
    const has = outcome === 'upright' || outcome === 'overloaded';
    return {
      ...answerByClosedForm(touchdown),
      outcome,
      leastMargin: { value: has ? index : 1e6, time: 0 },
      restTiltDeg: has ? index : 0,
      unsettledReturns: index % 7 === 3 ? 2 : 0,
    };
  };
}
const named = (measures: readonly MeasureSummary[], name: string): MeasureSummary => {
  const found = measures.find(({ measure }) => measure === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};

/** So many of the first hundreds have one that ends otherwise, the 51st. */
function fall(count: number, as: TouchdownOutcome): (index: number) => TouchdownOutcome {
  return (index) => (index % 100 === 50 && index < 100 * count ? as : 'upright');
}

// 1000 runs: the bound for 99 % with 95 % is the fifth value, since the sum of five binomial terms is below 0.05, of six above
describe('order statistics of a campaign with fallen runs', () => {
  it('[DI6] a bound whose rank falls among them is cut off, never a number they had at their verdict', () => {
    for (const as of ['tipped downhill', 'tipped uphill', 'timed out'] as const) {
      const measures = measured(1000, fall(8, as));
      const margin = named(measures, 'leastMargin');
      expect(margin).toMatchObject({ cutOff: 8, worstKnown: 0, least: undefined, greatest: 999 });
      expect(margin.bound).toEqual({ coverage: 0.99, confidence: 0.95, value: undefined });
      const tilt = named(measures, 'restTiltDeg');
      expect(tilt).toMatchObject({ cutOff: 8, worstKnown: 999, least: 0, greatest: undefined });
      expect(tilt.bound?.value).toBeUndefined();
    }
  });

  it('[DI6] a bound beyond them is the value of its rank with all of them before it', () => {
    const measures = measured(1000, fall(2, 'tipped uphill'));
    // the fifth of all, after two that fell: the third known one, which is case 2
    expect(named(measures, 'leastMargin').bound?.value).toBe(2);
    expect(named(measures, 'restTiltDeg').bound?.value).toBe(997);
    // the tenth of all; case 50 and 150 fell
    expect(named(measures, 'leastMargin').quantiles[0]).toEqual({ share: 0.01, value: 7 });
    expect(named(measures, 'restTiltDeg').quantiles[4]).toEqual({ share: 0.99, value: 991 });
  });

  it('[DI6] one that came to rest overloaded keeps its values', () => {
    expect(named(measured(1000, fall(8, 'overloaded')), 'leastMargin')).toMatchObject({
      cutOff: 0,
      least: 0,
      greatest: 999,
    });
  });

  it('counts the cases in which a leg did not settle, and how often, and names them row by row', () => {
    // 3, 10, 17, ... 94 of 100
    expect(summaryOf(100, () => 'upright')?.unsettled).toEqual({ cases: 14, returns: 28 });
    const campaign = plainCampaign({ runs: 10 });
    const tally = createTally(campaign);
    const batch = runBatch(
      campaign,
      { first: 0, count: 10 },
      answerer((i) => (i === 4 ? 'timed out' : 'upright')),
    );
    addBatch(tally, batch);
    const rows = caseRows(tally);
    expect(rows.map(({ unsettledReturns }) => unsettledReturns)).toEqual([0, 0, 0, 2, 0, 0, 0, 0, 0, 0]);
    expect(rows.flatMap(({ index, isCutOff }) => (isCutOff ? [index] : []))).toEqual([4]);
  });

  it('says of its verdict whether the draws are independent', () => {
    const requirement = { fraction: 0.9, confidence: 0.95, outcomes: ['upright'] } as const;
    for (const method of ['plain', 'sobol', 'latin'] as const) {
      const campaign = plainCampaign({ runs: 64, method, requirement });
      const tally = createTally(campaign);
      addBatch(tally, runBatch(campaign, { first: 0, count: 64 }, answerByClosedForm));
      expect(summarize(tally)?.requirement?.assumptionHolds).toBe(method === 'plain');
    }
  });
});
