import { CAMPAIGN_INPUTS, caseRows, MEASURES, type CampaignTally, type LegCondition } from '../../engine/index.ts';
import type { CsvTable } from './csv.ts';

/** Every case of a campaign that was run, for spreadsheets: index, outcome, what was drawn, what was measured. */
export function campaignCsv(tally: CampaignTally): CsvTable {
  const drawn = CAMPAIGN_INPUTS.filter((input) => isDrawn(tally, input));
  const names = ['index', 'outcome', ...drawn, 'gear', ...MEASURES.map(({ name }) => name)];
  const rows = caseRows(tally).map(({ index, outcome, values, gear, measures }) => [
    index,
    outcome,
    ...drawn.map((input) => values[input] ?? null),
    gear.map(describeLeg).join('; '),
    ...measures.map((value) => (Number.isFinite(value) ? value : null)),
  ]);
  return { names, rows };
}

function isDrawn({ campaign }: CampaignTally, input: (typeof CAMPAIGN_INPUTS)[number]): boolean {
  return campaign.inputs[input] !== undefined || campaign.pairs.some(({ inputs }) => inputs.includes(input));
}

/** 'leg 2 soft 0.5': legs count from 1 for people. */
export function describeLeg(condition: LegCondition): string {
  const factor = condition.kind === 'missing' || condition.factor === undefined ? '' : ` ${condition.factor}`;
  return `leg ${condition.leg + 1} ${condition.kind}${factor}`;
}
