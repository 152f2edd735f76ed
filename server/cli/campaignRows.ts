import { figure } from '../../engine/figures.ts';
import {
  CAMPAIGN_INPUTS,
  caseRows,
  MEASURES,
  type Campaign,
  type CampaignInput,
  type CampaignTally,
} from '../../engine/dispersion/index.ts';
import type { LegCondition } from '../../engine/touchdown/index.ts';
import type { CsvTable } from '../../engine/csv.ts';

/** Every case of a campaign that was run, for spreadsheets: index, outcome, what was drawn, what was measured. */
export function campaignCsv(tally: CampaignTally): CsvTable {
  const drawn = givenInputs(tally.campaign);
  const names = [
    'index',
    'outcome',
    ...drawn,
    'gear',
    ...MEASURES.map(({ name }) => name),
    'isCutOff',
    'unsettledReturns',
  ];
  const rows = caseRows(tally).map(({ index, outcome, values, gear, measures, isCutOff, unsettledReturns }) => [
    index,
    outcome,
    ...drawn.map((input) => values[input] ?? null),
    gear.map(describeLeg).join('; '),
    ...measures.map((value) => (Number.isFinite(value) ? value : null)),
    isCutOff,
    unsettledReturns,
  ]);
  return { names, rows };
}

/** The inputs that a campaign speaks of, alone or in a pair; the others stand at their fallback. */
export function givenInputs(campaign: Campaign): readonly CampaignInput[] {
  return CAMPAIGN_INPUTS.filter(
    (input) => campaign.inputs[input] !== undefined || campaign.pairs.some(({ inputs }) => inputs.includes(input)),
  );
}

/** What was drawn for an input: two decimals for small figures, none for large ones. */
export function drawnFigure(value: number | undefined): string {
  return figure(value, Math.abs(value ?? 0) >= 1000 ? 0 : 2);
}

/** 'leg 2 soft 0.5': legs count from 1 for people. */
export function describeLeg(condition: LegCondition): string {
  const factor = condition.kind === 'missing' || condition.factor === undefined ? '' : ` ${condition.factor}`;
  return `leg ${condition.leg + 1} ${condition.kind}${factor}`;
}
