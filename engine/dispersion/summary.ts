/** What a campaign says so far: shares with intervals, order statistics, verdict, what drives the margin, worst cases. */
import { TOUCHDOWN_OUTCOMES, type TouchdownOutcome } from '../touchdown/touchdownCase.ts';
import { campaignPoints, createDrawer, type CampaignRequirement, type DrawnInputs } from './campaign.ts';
import { CAMPAIGN_INPUTS, type CampaignInput } from './campaignInputs.ts';
import { clopperPearson, wilson, type Interval } from './intervals.ts';
import { sortedQuantile, toleranceRank, type Coverage } from './orderStatistics.ts';
import { judge, type Verdict } from './requirement.ts';
import { rankCorrelation } from './sensitivity.ts';
import { answeredCases, measureAt, MEASURES, outcomeAt, type CampaignTally, type Measure } from './tally.ts';

export interface CampaignSummary {
  readonly asked: number;
  readonly done: number;
  /** True until every case is answered. */
  readonly isPartial: boolean;
  /** Whether the cases are independent draws, as all intervals here assume. */
  readonly independent: boolean;
  readonly outcomes: readonly OutcomeShare[];
  readonly requirement?: CampaignRequirement & { readonly verdict: Verdict };
  readonly measures: readonly MeasureSummary[];
  /** Rank correlation of each dispersed input with the least margin, strongest first. */
  readonly drivers: readonly { readonly input: CampaignInput; readonly correlation: number }[];
  /** Failures first, then by least margin, then by index. */
  readonly worst: readonly WorstCase[];
}

export interface OutcomeShare {
  readonly outcome: TouchdownOutcome;
  readonly count: number;
  /** Of the cases answered [-]. */
  readonly fraction: number;
  readonly wilson95: Interval;
  readonly clopperPearson95: Interval;
}

export interface MeasureSummary {
  readonly measure: Measure;
  readonly unit: string;
  readonly adverse: 'low' | 'high';
  readonly least: number;
  readonly quantiles: readonly { readonly share: number; readonly value: number }[];
  readonly greatest: number;
  /** On the adverse side, from order statistics; absent for want of runs. */
  readonly bound?: Coverage & { readonly value: number };
}

export interface WorstCase extends DrawnInputs {
  readonly index: number;
  readonly outcome: TouchdownOutcome;
  /** [m] */
  readonly leastMargin: number;
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
  return {
    asked: campaign.runs,
    done,
    isPartial: done < campaign.runs,
    independent: campaignPoints(campaign).independent,
    outcomes: TOUCHDOWN_OUTCOMES.map((outcome) => outcomeShare(tally, cases, outcome)),
    ...(requirement && { requirement: { ...requirement, verdict: verdictOf(tally, cases, requirement) } }),
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
  const sorted = Float64Array.from(cases, (index) => measureAt(tally, index, measure)).toSorted();
  const rank = toleranceRank(sorted.length, BOUND);
  const value = rank === undefined ? undefined : sorted[adverse === 'low' ? rank - 1 : sorted.length - rank];
  return {
    measure,
    unit,
    adverse,
    least: sorted[0] ?? NaN,
    quantiles: QUANTILES.map((share) => ({ share, value: sortedQuantile(sorted, share) })),
    greatest: sorted[sorted.length - 1] ?? NaN,
    ...(value !== undefined && { bound: { ...BOUND, value } }),
  };
}

function drivers(tally: CampaignTally, cases: Uint32Array): CampaignSummary['drivers'] {
  const draw = createDrawer(tally.campaign);
  const drawn = Array.from(cases, (index) => draw(index).values);
  const margins = Float64Array.from(cases, (index) => measureAt(tally, index, 'leastMargin'));
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
    ...draw(index),
  }));
}

/** One case that was run: what was drawn and what came out, measures in the order of MEASURES. */
export interface CaseRow extends DrawnInputs {
  readonly index: number;
  readonly outcome: TouchdownOutcome;
  readonly measures: readonly number[];
}

/** Every case answered so far, by index. */
export function caseRows(tally: CampaignTally): readonly CaseRow[] {
  const draw = createDrawer(tally.campaign);
  return Array.from(answeredCases(tally), (index) => ({
    index,
    outcome: outcomeAt(tally, index) ?? 'timed out',
    ...draw(index),
    measures: MEASURES.map(({ name }) => measureAt(tally, index, name)),
  }));
}
