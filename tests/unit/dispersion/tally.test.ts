import { describe, expect, it } from 'vitest';
import {
  createTally,
  addBatch,
  measureAt,
  MEASURES,
  runBatch,
  type TouchdownAnswer,
} from '../../../engine/dispersion/tally.ts';
import { plainCampaign } from '../../support/plainCampaign.ts';

const ANSWER: TouchdownAnswer = {
  outcome: 'upright',
  leastMargin: { value: 0.4, time: 1 },
  strokesUsed: [0.1, 0.7, 0.3],
  peakLoads: [300, 200, 900],
  peakAcceleration: 12,
  clearance: -0.2,
  slide: 0.05,
  restTiltDeg: 3,
  unsettledReturns: 0,
};

function measuresOf(answer: TouchdownAnswer): Readonly<Record<string, number>> {
  const tally = createTally(plainCampaign({ runs: 1 }));
  addBatch(
    tally,
    runBatch(tally.campaign, { first: 0, count: 1 }, () => answer),
  );
  return Object.fromEntries(MEASURES.map(({ name }) => [name, measureAt(tally, 0, name)]));
}

describe('what is kept of a run', () => {
  it('[DI9] is its figures as they are, and of figures a leg the greatest', () => {
    expect(measuresOf(ANSWER)).toEqual({
      leastMargin: 0.4,
      strokeUsed: 0.7,
      peakLoad: 900,
      peakAcceleration: 12,
      clearance: -0.2,
      slide: 0.05,
      restTiltDeg: 3,
    });
  });

  it('[DI9] is no stroke and no load where no leg met the ground', () => {
    const untouched = { ...ANSWER, strokesUsed: [0, 0], peakLoads: [0, 0] };
    expect(measuresOf(untouched)).toMatchObject({ strokeUsed: 0, peakLoad: 0 });
  });
});
