/**
 * Results of a campaign as they come in, by case. Every statistic is taken from the filled columns afterward, so it is
 * the same to the bit however the cases were shared out and in whatever order the batches arrived.
 */
import { assert } from '../assert.ts';
import {
  TOUCHDOWN_OUTCOMES,
  type TouchdownCase,
  type TouchdownOutcome,
  type TouchdownResult,
} from '../touchdown/touchdownCase.ts';
import { createDrawer, touchdownOf, type Campaign } from './campaign.ts';

/** What is kept of a run, as one number each. */
export const MEASURES = [
  { name: 'leastMargin', unit: 'm', adverse: 'low' },
  { name: 'strokeUsed', unit: '-', adverse: 'high' },
  { name: 'peakLoad', unit: 'N', adverse: 'high' },
  { name: 'peakAcceleration', unit: 'm/s²', adverse: 'high' },
  { name: 'clearance', unit: 'm', adverse: 'low' },
  { name: 'slide', unit: 'm', adverse: 'high' },
  { name: 'restTiltDeg', unit: 'deg', adverse: 'high' },
] as const;
export type Measure = (typeof MEASURES)[number]['name'];

/** The part of a touchdown's result that a campaign keeps. */
export type TouchdownAnswer = Pick<
  TouchdownResult,
  | 'outcome'
  | 'leastMargin'
  | 'strokesUsed'
  | 'peakLoads'
  | 'peakAcceleration'
  | 'clearance'
  | 'slide'
  | 'restTiltDeg'
  | 'unsettledReturns'
>;

export type SimulateTouchdown = (touchdown: TouchdownCase) => TouchdownAnswer;

/** Answers of consecutive cases, as plain columns that cross a thread for nothing. */
export interface CampaignBatch {
  /** Index of the first case. */
  readonly first: number;
  /** Place in TOUCHDOWN_OUTCOMES. */
  readonly outcomes: Uint8Array;
  /** One row a case, one column a measure, in the order of MEASURES. */
  readonly measures: Float64Array;
  /** Times that the force of a leg did not settle, a case each: with a count, a case is not to be relied on. */
  readonly unsettledReturns: Uint32Array;
}

export interface CampaignTally {
  readonly campaign: Campaign;
  /** Cases answered so far. */
  done: number;
  /** Place in TOUCHDOWN_OUTCOMES; NOT_RUN where the case has not been run. */
  readonly outcomes: Uint8Array;
  readonly measures: Float64Array;
  readonly unsettledReturns: Uint32Array;
}

const NOT_RUN = 255;

/** Runs cases first … first + count − 1. */
export function runBatch(
  campaign: Campaign,
  range: { readonly first: number; readonly count: number },
  simulate: SimulateTouchdown,
): CampaignBatch {
  const draw = createDrawer(campaign);
  const outcomes = new Uint8Array(range.count);
  const measures = new Float64Array(range.count * MEASURES.length);
  const unsettledReturns = new Uint32Array(range.count);
  for (let i = 0; i < range.count; i++) {
    const answer = simulate(touchdownOf(campaign, draw(range.first + i)));
    outcomes[i] = TOUCHDOWN_OUTCOMES.indexOf(answer.outcome);
    measures.set(measured(answer), i * MEASURES.length);
    unsettledReturns[i] = answer.unsettledReturns;
  }
  return { first: range.first, outcomes, measures, unsettledReturns };
}

export function createTally(campaign: Campaign): CampaignTally {
  return {
    campaign,
    done: 0,
    outcomes: new Uint8Array(campaign.runs).fill(NOT_RUN),
    measures: new Float64Array(campaign.runs * MEASURES.length),
    unsettledReturns: new Uint32Array(campaign.runs),
  };
}

/** Enters a batch. Each case may be entered once. */
export function addBatch(tally: CampaignTally, batch: CampaignBatch): void {
  const { first, outcomes, measures, unsettledReturns } = batch;
  assert(first >= 0 && first + outcomes.length <= tally.campaign.runs, `no cases from ${first} in this campaign`);
  assert(measures.length === outcomes.length * MEASURES.length, 'a batch has a row of measures a case');
  const fresh = tally.outcomes.subarray(first, first + outcomes.length).every((outcome) => outcome === NOT_RUN);
  assert(fresh, `cases from ${first} were entered before`);
  tally.outcomes.set(outcomes, first);
  tally.measures.set(measures, first * MEASURES.length);
  tally.unsettledReturns.set(unsettledReturns, first);
  tally.done += outcomes.length;
}

export function outcomeAt(tally: CampaignTally, index: number): TouchdownOutcome | undefined {
  return TOUCHDOWN_OUTCOMES[tally.outcomes[index] ?? NOT_RUN];
}

/**
 * Whether the run of a case was cut off: it is stopped once it is sure to tip, or at the limit of time. What was measured up
 * to then is no extreme of the whole motion, so it has no rank among those that came to rest but the worst.
 */
export function isCutOff(outcome: TouchdownOutcome | undefined): boolean {
  return outcome === 'tipped downhill' || outcome === 'tipped uphill' || outcome === 'timed out';
}

export function measureAt(tally: CampaignTally, index: number, measure: Measure): number {
  return tally.measures[index * MEASURES.length + MEASURES.findIndex(({ name }) => name === measure)] ?? NaN;
}

/** Indices of the cases answered so far, ascending. */
export function answeredCases(tally: CampaignTally): Uint32Array {
  const indices = new Uint32Array(tally.done);
  let count = 0;
  for (const [i, outcome] of tally.outcomes.entries()) if (outcome !== NOT_RUN) indices[count++] = i;
  return indices;
}

function measured(answer: TouchdownAnswer): readonly number[] {
  return [
    answer.leastMargin.value,
    Math.max(0, ...answer.strokesUsed),
    Math.max(0, ...answer.peakLoads),
    answer.peakAcceleration,
    answer.clearance,
    answer.slide,
    answer.restTiltDeg,
  ];
}
