import { drainTanks, massProperties, type Lander } from '../../engine/index.ts';
import { UsageError } from './usageError.ts';

/** The lander with its tanks drained evenly until it weighs so much [kg]; as its file fills them where nothing is said. */
export function withMass(lander: Lander, mass: number | undefined): Lander {
  if (mass === undefined) return lander;
  const full = massProperties(lander).mass;
  const empty = massProperties(
    lander,
    lander.tanks.map(() => 0),
  ).mass;
  if (mass < empty || mass > full)
    throw new UsageError(`--mass: ${lander.name} weighs from ${empty} kg, tanks empty, to ${full} kg, came ${mass}`);
  return drainTanks(lander, mass);
}
