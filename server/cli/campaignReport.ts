import { summarize, type CampaignTally, type FactorShares } from '../../engine/dispersion/index.ts';
import type { CampaignDocument } from './campaignFile.ts';
import { rangedCampaign } from './campaignRange.ts';
import { campaignResults } from './campaignResults.ts';
import { campaignCsv } from './campaignRows.ts';
import type { CampaignStacks } from './campaignStacks.ts';
import { campaignText } from './campaignText.ts';
import type { Report } from './report.ts';

interface Extras {
  readonly asked: boolean;
  readonly shares: readonly FactorShares[] | undefined;
  readonly stack: CampaignStacks | undefined;
}

/** What a campaign says, however much of it was done. */
export function reportCampaign(
  word: string,
  document: CampaignDocument,
  tally: CampaignTally,
  { asked, shares, stack }: Extras,
): Report {
  const { campaign } = tally;
  const inputs = { campaign: document, gravity: campaign.gravity };
  const ranged = { 'touchdown simulation': rangedCampaign(campaign), dispersion: { runs: campaign.runs } };
  const summary = summarize(tally);
  if (summary === undefined) {
    const results = { isPartial: true, runs: { asked: campaign.runs, done: 0 }, outcomes: null, requirement: null };
    return {
      verb: 'disperse',
      inputs,
      ranged,
      results,
      text: 'PARTIAL: stopped before any touchdown was simulated.',
      isPartial: true,
    };
  }
  const isPartial = summary.isPartial || (asked && shares === undefined);
  return {
    verb: 'disperse',
    inputs,
    ranged,
    results: { ...campaignResults(summary, shares, stack), isPartial },
    text: campaignText(word, campaign, summary, { shares, stack, areSharesMissing: asked && shares === undefined }),
    csv: campaignCsv(tally),
    isPartial,
  };
}
