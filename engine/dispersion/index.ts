/** Public door of dispersions. */
export {
  campaignAxes,
  campaignFactors,
  createDrawer,
  touchdownOf,
  type Campaign,
  type CampaignRequirement,
  type DrawnInputs,
} from './campaign.ts';
export {
  CAMPAIGN_INPUTS,
  INPUT_FACTS,
  type CampaignInput,
  type GearChoices,
  type InputDistributions,
  type InputFacts,
  type PairedInputs,
} from './campaignInputs.ts';
export { campaignStackUp } from './campaignStackUp.ts';
export { campaignSimulator } from './campaignSimulator.ts';
export { DISTRIBUTION_KINDS, quantile, type Choice, type Distribution, type NormalPair } from './distribution.ts';
export {
  clopperPearson,
  lowerBound,
  upperBound,
  wilson,
  zeroFailureRuns,
  type Interval,
  type Tally,
} from './intervals.ts';
export { sortedQuantile, toleranceConfidence, toleranceRank, toleranceRuns, type Coverage } from './orderStatistics.ts';
export { CAMPAIGN_BUDGET, CAMPAIGN_FORMAT, CAMPAIGN_RANGES, parseCampaign, type ReadLander } from './parseCampaign.ts';
export { createPointSet, SAMPLING_METHODS, type PointSet, type SamplingMethod } from './pointSet.ts';
export { judge, runsWithFailures, type Requirement, type Verdict } from './requirement.ts';
export { rankCorrelation, varianceShares, type VarianceShares } from './sensitivity.ts';
export {
  STACKED_QUANTITIES,
  stackUp,
  type Contribution,
  type StackedQuantity,
  type StackUp,
  type StackUpQuestion,
} from './stackUp.ts';
export {
  caseRows,
  summarize,
  type CaseRow,
  type CampaignSummary,
  type MeasureSummary,
  type OutcomeShare,
  type WorstCase,
} from './summary.ts';
export {
  addBatch,
  createTally,
  MEASURES,
  runBatch,
  type CampaignBatch,
  type CampaignTally,
  type Measure,
  type SimulateTouchdown,
  type TouchdownAnswer,
} from './tally.ts';
export {
  createVarianceDrawer,
  factorShares,
  planVariance,
  runVarianceBatch,
  type FactorShares,
  type VariancePlan,
} from './varianceCampaign.ts';
