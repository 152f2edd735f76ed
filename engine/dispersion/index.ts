/** Public door of dispersions. */
export { createDrawer, touchdownOf, type Campaign } from './campaign.ts';
export { CAMPAIGN_INPUTS, INPUT_FACTS, type CampaignInput } from './campaignInputs.ts';
export { campaignStackUp } from './campaignStackUp.ts';
export { campaignSimulator } from './campaignSimulator.ts';
export { clopperPearson, lowerBound, wilson, zeroFailureRuns, type Interval } from './intervals.ts';
export { deviationOf } from './deviation.ts';
export { toleranceRuns } from './orderStatistics.ts';
export { CAMPAIGN_BUDGET, CAMPAIGN_FORMAT, CAMPAIGN_RANGES, parseCampaign } from './parseCampaign.ts';
export { SAMPLING_METHODS, type SamplingMethod } from './pointSet.ts';
export { judge, type Verdict } from './requirement.ts';
export { simulatedStackUp, type SimulatedStackUp } from './simulatedStackUp.ts';
export { type StackUp } from './stackUp.ts';
export { caseRows } from './caseRows.ts';
export { summarize, type CampaignSummary, type MeasureSummary } from './summary.ts';
export { addBatch, createTally, MEASURES, runBatch, type CampaignBatch, type CampaignTally } from './tally.ts';
export {
  factorShares,
  planVariance,
  runVarianceBatch,
  type FactorShares,
  type VariancePlan,
} from './varianceCampaign.ts';
