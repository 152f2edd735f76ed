import { drainTanks, massRange, type Lander } from '../../engine/lander/index.ts';
import { UsageError } from './usageError.ts';

/** The lander with its tanks drained evenly until it weighs so much [kg]; as its file fills them where nothing is said. */
export function withMass(lander: Lander, mass: number | undefined): Lander {
  if (mass === undefined) return lander;
  const { empty, full } = massRange(lander);
  if (mass < empty || mass > full)
    throw new UsageError(`--mass: ${lander.name} weighs from ${empty} kg, tanks empty, to ${full} kg, got ${mass}`);
  return drainTanks(lander, mass);
}
