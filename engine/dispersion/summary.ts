/** What a campaign says so far: shares with intervals, order statistics, verdict, what drives the margin, worst cases. */
import { TOUCHDOWN_OUTCOMES, type TouchdownOutcome } from '../touchdown/touchdownCase.ts';
import { campaignPoints, createDrawer, type CampaignRequirement, type DrawnInputs } from './campaign.ts';
import { CAMPAIGN_INPUTS, type CampaignInput } from './campaignInputs.ts';
import { valueOfRank, worstKnown } from './censoredSample.ts';
import { clopperPearson, wilson, type Interval } from './intervals.ts';
import { quantileRank, toleranceRank, type Coverage } from './orderStatistics.ts';
import { judge, type Verdict } from './requirement.ts';
import { rankCorrelation } from './sensitivity.ts';
import { answeredCases, isCutOff, measureAt, MEASURES, outcomeAt, type CampaignTally, type Measure } from './tally.ts';

export interface CampaignSummary {
  readonly asked: number;
  readonly done: number;
  /** True until every case is answered. */
  readonly isPartial: boolean;
  /** Whether the cases are independent draws, as all intervals here assume. */
  readonly independent: boolean;
  readonly outcomes: readonly OutcomeShare[];
  readonly requirement?: CampaignRequirement & {
    readonly verdict: Verdict;
    /** Whether the draws are independent, as its bounds assume; else its confidence is not proved. */
    readonly assumptionHolds: boolean;
  };
  /** Cases in which the force of a leg did not settle, not to be relied on, and how often it did not in all. */
  readonly unsettled: { readonly cases: number; readonly returns: number };
  readonly measures: readonly MeasureSummary[];
  /** Rank correlation of each dispersed input with the least margin, strongest first. */
  readonly drivers: readonly { readonly input: CampaignInput; readonly correlation: number }[];
  /** Failures first, then by least margin, then by index. */
  readonly worst: readonly WorstCase[];
}

interface OutcomeShare {
  readonly outcome: TouchdownOutcome;
  readonly count: number;
  /** Of the cases answered [-]. */
  readonly fraction: number;
  readonly wilson95: Interval;
  readonly clopperPearson95: Interval;
}

/**
 * Order statistics of a measure. Cases that were cut off (see isCutOff) rank as the worst; a value that falls among them is
 * undefined: it lies beyond `worstKnown`, and nobody knows how far.
 */
export interface MeasureSummary {
  readonly measure: Measure;
  readonly unit: string;
  readonly adverse: 'low' | 'high';
  /** Cases that were cut off. */
  readonly cutOff: number;
  /** Of the cases that were not cut off; undefined when all were. */
  readonly worstKnown: number | undefined;
  readonly least: number | undefined;
  readonly quantiles: readonly { readonly share: number; readonly value: number | undefined }[];
  readonly greatest: number | undefined;
  /** On the adverse side, from order statistics; absent for want of runs. */
  readonly bound?: Coverage & { readonly value: number | undefined };
}

interface WorstCase extends DrawnInputs {
  readonly index: number;
  readonly outcome: TouchdownOutcome;
  /** Up to the verdict of a case that was cut off [m]. */
  readonly leastMargin: number;
  readonly isCutOff: boolean;
}

const CONFIDENCE = 0.95;
const QUANTILES = [0.01, 0.05, 0.5, 0.95, 0.99] as const;
/** The bound that is quoted for each measure: 99 % of all cases, with 95 % confidence; needs 299 runs. */
const BOUND: Coverage = { coverage: 0.99, confidence: CONFIDENCE };
const WORST_CASES = 10;

/** Undefined while no case is answered. */
export function summarize(tally: CampaignTally): CampaignSummary | undefined {
  const { campaign, done } = tally;
  if (done === 0) return undefined;
  const cases = answeredCases(tally);
  const requirement = campaign.requirement;
  const { independent } = campaignPoints(campaign);
  return {
    asked: campaign.runs,
    done,
    isPartial: done < campaign.runs,
    independent,
    outcomes: TOUCHDOWN_OUTCOMES.map((outcome) => outcomeShare(tally, cases, outcome)),
    ...(requirement && {
      requirement: { ...requirement, verdict: verdictOf(tally, cases, requirement), assumptionHolds: independent },
    }),
    unsettled: unsettled(tally, cases),
    measures: MEASURES.map((facts) => summarizeMeasure(tally, cases, facts)),
    drivers: drivers(tally, cases),
    worst: worstCases(tally, cases),
  };
}

function outcomeShare(tally: CampaignTally, cases: Uint32Array, outcome: TouchdownOutcome): OutcomeShare {
  const place = TOUCHDOWN_OUTCOMES.indexOf(outcome);
  let count = 0;
  for (const index of cases) if (tally.outcomes[index] === place) count++;
  const counted = { successes: count, runs: cases.length };
  return {
    outcome,
    count,
    fraction: count / cases.length,
    wilson95: wilson(counted, CONFIDENCE),
    clopperPearson95: clopperPearson(counted, CONFIDENCE),
  };
}

function verdictOf(tally: CampaignTally, cases: Uint32Array, requirement: CampaignRequirement): Verdict {
  let successes = 0;
  for (const index of cases) if (isSuccess(tally, index, requirement)) successes++;
  return judge({ successes, runs: cases.length }, requirement);
}

function isSuccess(tally: CampaignTally, index: number, requirement: CampaignRequirement | undefined): boolean {
  const outcome = outcomeAt(tally, index);
  return outcome !== undefined && (requirement?.outcomes ?? ['upright']).includes(outcome);
}

function summarizeMeasure(
  tally: CampaignTally,
  cases: Uint32Array,
  { name: measure, unit, adverse }: (typeof MEASURES)[number],
): MeasureSummary {
  const complete = cases.filter((index) => !isCutOff(outcomeAt(tally, index)));
  const known = Float64Array.from(complete, (index) => measureAt(tally, index, measure)).toSorted();
  const count = cases.length;
  const sample = { known, cutOff: count - known.length, adverse };
  const rank = toleranceRank(count, BOUND);
  const value = rank === undefined ? undefined : valueOfRank(sample, adverse === 'low' ? rank : count + 1 - rank);
  return {
    measure,
    unit,
    adverse,
    cutOff: sample.cutOff,
    worstKnown: worstKnown(sample),
    least: valueOfRank(sample, 1),
    quantiles: QUANTILES.map((share) => ({ share, value: valueOfRank(sample, quantileRank(count, share)) })),
    greatest: valueOfRank(sample, count),
    ...(rank !== undefined && { bound: { ...BOUND, value } }),
  };
}

function unsettled(tally: CampaignTally, cases: Uint32Array): CampaignSummary['unsettled'] {
  const counts = Array.from(cases, (index) => tally.unsettledReturns[index] ?? 0);
  return {
    cases: counts.filter((count) => count > 0).length,
    returns: counts.reduce((sum, count) => sum + count, 0),
  };
}

function drivers(tally: CampaignTally, cases: Uint32Array): CampaignSummary['drivers'] {
  const draw = createDrawer(tally.campaign);
  const drawn = Array.from(cases, (index) => draw(index).values);
  // cut off: the worst rank, shared by all of them
  const margins = Float64Array.from(cases, (index) =>
    isCutOff(outcomeAt(tally, index)) ? -Infinity : measureAt(tally, index, 'leastMargin'),
  );
  return CAMPAIGN_INPUTS.flatMap((input) => {
    if (drawn[0]?.[input] === undefined) return [];
    const correlation = rankCorrelation(
      drawn.map((values) => values[input] ?? NaN),
      margins,
    );
    return correlation === undefined ? [] : [{ input, correlation }];
  }).toSorted((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation));
}

function worstCases(tally: CampaignTally, cases: Uint32Array): readonly WorstCase[] {
  const { campaign } = tally;
  const rank = (index: number): number => (isSuccess(tally, index, campaign.requirement) ? 1 : 0);
  const margin = (index: number): number => measureAt(tally, index, 'leastMargin');
  const order = cases.toSorted((a, b) => rank(a) - rank(b) || margin(a) - margin(b) || a - b);
  const draw = createDrawer(campaign);
  return Array.from(order.subarray(0, WORST_CASES), (index) => ({
    index,
    outcome: outcomeAt(tally, index) ?? 'timed out',
    leastMargin: margin(index),
    isCutOff: isCutOff(outcomeAt(tally, index)),
    ...draw(index),
  }));
}
