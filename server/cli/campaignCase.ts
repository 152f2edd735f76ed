import { figure } from '../../engine/figures.ts';
import { createDrawer, touchdownOf, type Campaign } from '../../engine/dispersion/index.ts';
import { simulateTouchdown } from '../../engine/touchdown/index.ts';
import type { CampaignDocument } from './campaignFile.ts';
import { rangedCampaign } from './campaignRange.ts';
import { describeLeg, drawnFigure } from './campaignRows.ts';
import { accepted } from './problems.ts';
import type { Report } from './report.ts';
import { HISTORY_EVERY, writeHistory } from './touchdownHistory.ts';
import { touchdownResults } from './touchdownResults.ts';
import { courseLines, legTable, outcomeWords } from './touchdownText.ts';
import { UsageError } from './usageError.ts';

interface CaseOptions {
  readonly case: number;
  readonly history?: string;
}

/** One case of a campaign alone: what is drawn for it, and its touchdown as `kilter touchdown` shows one. */
export function reportCase(
  word: string,
  document: CampaignDocument,
  campaign: Campaign,
  { case: index, history }: CaseOptions,
): Report {
  if (index >= campaign.runs)
    throw new UsageError(`--case: expected an index from 0 to ${campaign.runs - 1}, got ${index}`);
  const drawn = createDrawer(campaign)(index);
  const wanted = history === undefined ? {} : { historyEvery: HISTORY_EVERY };
  const result = accepted(word, simulateTouchdown(touchdownOf(campaign, drawn), wanted));
  const { lander, gravity, title } = campaign;
  const inputs = { campaign: document, gravity, case: index };
  if (history !== undefined) writeHistory(history, result.history ?? [], inputs);
  const gear = drawn.gear.map(describeLeg);
  const drawnWords = Object.entries(drawn.values).map(([input, value]) => `${input} ${drawnFigure(value)}`);
  const folding = drawn.gear.flatMap((condition) => (condition.kind === 'not latched' ? [condition.leg + 1] : []));
  return {
    verb: 'disperse',
    inputs,
    ranged: { 'touchdown simulation': { ...rangedCampaign(campaign), ...drawn.values, gear: drawn.gear } },
    results: { drawn: { inputs: drawn.values, gear }, ...touchdownResults(result) },
    text: [
      `${title} (${word}): case ${index} of ${campaign.runs}, ${lander.name} at ${figure(gravity, 3)} m/s^2: ${outcomeWords(result)}.`,
      `Drawn: ${[...drawnWords, ...gear].join(', ')}.`,
      ...courseLines(result),
      '',
      legTable(lander, folding, result),
    ].join('\n'),
  };
}
