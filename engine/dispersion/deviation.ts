import type { Campaign } from './campaign.ts';
import type { CampaignInput } from './campaignInputs.ts';
import { quantile, type Distribution } from './distribution.ts';

/** Values, spread evenly over all cases, from which a deviation is taken where no formula states it: right to half a percent. */
const EVEN_VALUES = 2000;

/** Standard deviation of an input as it is drawn, alone or one of a pair; undefined where it is not drawn, or always the same. */
export function deviationOf({ inputs, pairs }: Campaign, input: CampaignInput): number | undefined {
  for (const { inputs: names, deviations } of pairs) {
    const place = names.indexOf(input);
    if (place >= 0) return deviations[place];
  }
  const distribution = inputs[input];
  if (distribution === undefined) return undefined;
  const deviation = distribution.kind === 'normal' ? distribution.deviation : evenDeviation(distribution);
  return deviation > 0 ? deviation : undefined;
}

function evenDeviation(distribution: Distribution): number {
  const values = Array.from({ length: EVEN_VALUES }, (_, i) => quantile(distribution, (i + 0.5) / EVEN_VALUES));
  const mean = values.reduce((sum, value) => sum + value, 0) / EVEN_VALUES;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0) / EVEN_VALUES);
}
