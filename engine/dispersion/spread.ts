/** How far a dispersed input is taken as a tolerance. */
import type { Campaign } from './campaign.ts';
import { INPUT_FACTS, type CampaignInput } from './campaignInputs.ts';
import { quantile } from './distribution.ts';

/** Share of all cases below a normal's mean less three deviations [-]: how far a dispersion is taken as a tolerance. */
const BELOW_THREE_DEVIATIONS = 0.00135;

export interface Spread {
  /** Median. */
  readonly nominal: number;
  /** The farther of the two ends from it. */
  readonly tolerance: number;
  readonly low: number;
  readonly high: number;
}

/** Median and three-deviation tolerance of an input, alone or one of a pair; its fallback, without tolerance, else. */
export function spreadOf({ inputs, pairs }: Campaign, input: CampaignInput): Spread {
  for (const { inputs: names, means, deviations } of pairs) {
    const place = names[0] === input ? 0 : 1;
    if (names[place] === input) {
      const [nominal, tolerance] = [means[place], 3 * deviations[place]];
      return { nominal, tolerance, low: nominal - tolerance, high: nominal + tolerance };
    }
  }
  const distribution = inputs[input];
  if (distribution === undefined) {
    const nominal = INPUT_FACTS[input].fallback ?? 0;
    return { nominal, tolerance: 0, low: nominal, high: nominal };
  }
  const nominal = quantile(distribution, 0.5);
  const low = quantile(distribution, BELOW_THREE_DEVIATIONS);
  const high = quantile(distribution, 1 - BELOW_THREE_DEVIATIONS);
  return { nominal, tolerance: Math.max(Math.abs(high - nominal), Math.abs(nominal - low)), low, high };
}

/** The input that gives the speed downhill. */
export function speedInput({ inputs }: Campaign): CampaignInput {
  return inputs.horizontalSpeed === undefined ? 'downhillSpeed' : 'horizontalSpeed';
}
