import { landerShape } from '../../engine/checks/index.ts';
import type { Campaign } from '../../engine/dispersion/index.ts';

/** What the checked ranges look at in a campaign: the shape of its lander, every distribution, alone or in a pair, its soil and gear. */
export function rangedCampaign({
  lander,
  inputs,
  pairs,
  soil,
  gear = [],
}: Campaign): Readonly<Record<string, unknown>> {
  const paired = pairs.flatMap(({ inputs: names, means, deviations }) =>
    names.map((name, at) => [name, { mean: means[at], deviation: deviations[at] }] as const),
  );
  return {
    ...landerShape(lander),
    ...(soil?.kind === 'bearing' && { soilStrength: soil.strength }),
    ...inputs,
    ...Object.fromEntries(paired),
    gear: gear.flatMap(({ value }) => value),
  };
}
