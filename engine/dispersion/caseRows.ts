import type { TouchdownOutcome } from '../touchdown/touchdownCase.ts';
import { createDrawer, type DrawnInputs } from './campaign.ts';
import { answeredCases, isCutOff, measureAt, MEASURES, outcomeAt, type CampaignTally } from './tally.ts';

/** One case that was run: what was drawn and what came out, measures in the order of MEASURES. */
interface CaseRow extends DrawnInputs {
  readonly index: number;
  readonly outcome: TouchdownOutcome;
  /** Up to the verdict where isCutOff says so. */
  readonly measures: readonly number[];
  readonly isCutOff: boolean;
  readonly unsettledReturns: number;
}

/** Every case answered so far, by index. */
export function caseRows(tally: CampaignTally): readonly CaseRow[] {
  const draw = createDrawer(tally.campaign);
  return Array.from(answeredCases(tally), (index) => ({
    index,
    outcome: outcomeAt(tally, index) ?? 'timed out',
    ...draw(index),
    measures: MEASURES.map(({ name }) => measureAt(tally, index, name)),
    isCutOff: isCutOff(outcomeAt(tally, index)),
    unsettledReturns: tally.unsettledReturns[index] ?? 0,
  }));
}
