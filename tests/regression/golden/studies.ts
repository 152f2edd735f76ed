import { addBatch, campaignSimulator, createTally, runBatch, summarize } from '../../../engine/dispersion/index.ts';
import { advanceEnvelope, createEnvelope, mapEnvelope, rowLimits } from '../../../engine/envelope/index.ts';
import { compareUprightLying } from '../../../engine/structure/index.ts';
import { SHAPE_FIELDS, stanceStudy, tradePoint, tradeSteps, type StudyCase } from '../../../engine/study/index.ts';
import { prepareTouchdown, runTouchdown } from '../../../engine/touchdown/index.ts';
import { WORLDS } from '../../../engine/worlds.ts';
import { MOON, SHIPPED, shippedLander } from '../../support/touchDown.ts';
import { plainCampaign } from '../../support/plainCampaign.ts';
import { plainQuestion } from '../../support/plainEnvelope.ts';
import { digest } from './digest.ts';

/** Hashes of studies of whole landers, by what was studied. */
export function goldenStudies(): Readonly<Record<string, string>> {
  const compared = SHIPPED.map((id): readonly [string, string] => [
    `${id}, upright against lying`,
    digest(compareUprightLying(shippedLander(id), { gravity: MOON })),
  ]);
  return Object.fromEntries([
    ...compared,
    ['trivet, stance by world', digest(stanceStudy(ASKED, WORLDS))],
    ['trivet, a trade of each dimension', digest(SHAPE_FIELDS.map(tradedOnce))],
    ['a plain lander, dispersed', digest(dispersed())],
    ['a plain lander, envelope', digest(enveloped())],
  ]);
}

const ASKED: StudyCase = {
  lander: shippedLander('trivet'),
  gravity: MOON,
  slopeDeg: 4,
  descentRate: 1.5,
  horizontalSpeed: 0.5,
  friction: 0.8,
  missing: [],
};

/** At the least of the values tried. */
function tradedOnce(field: (typeof SHAPE_FIELDS)[number]): object {
  const [first] = tradeSteps(ASKED, field);
  return { field, ...tradePoint(ASKED, first!.shape) };
}

function dispersed(): object | undefined {
  const campaign = plainCampaign({
    runs: 200,
    gear: [
      { weight: 3, value: [] },
      { weight: 1, value: [{ leg: 1, kind: 'soft', factor: 0.5 }] },
    ],
    requirement: { fraction: 0.9, confidence: 0.9, outcomes: ['upright'] },
  });
  const simulate = campaignSimulator(campaign.lander);
  if (!simulate.ok) throw new Error('a plain lander can be simulated');
  const tally = createTally(campaign);
  addBatch(tally, runBatch(campaign, { first: 0, count: campaign.runs }, simulate.value));
  return summarize(tally);
}

function enveloped(): object {
  const question = plainQuestion({
    horizontalSpeed: { from: -3, to: 3, count: 17 },
    descentRate: { from: 0, to: 3, count: 9 },
    directions: [{ yaw: 0 }, { yaw: 0.5 }],
  });
  const prepared = prepareTouchdown(question.lander);
  if (!prepared.ok) throw new Error('a plain lander can be simulated');
  const envelope = createEnvelope(question);
  advanceEnvelope(envelope, (touchdown) => runTouchdown(prepared.value, touchdown), Infinity);
  return { map: mapEnvelope(envelope), limits: rowLimits(envelope) };
}
