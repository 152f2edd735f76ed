import type { Lander } from '../lander/lander.ts';
import { accept, type FieldProblem, type Result } from '../result.ts';
import { prepareTouchdown, runTouchdown, type TouchdownCase, type TouchdownResult } from '../touchdown/index.ts';

/**
 * The touchdown simulation as a campaign calls it, prepared once for a lander. Each worker makes its own: the memory of a run is
 * inside. What a campaign draws lies inside the ranges that the simulation takes, so nothing is checked run by run.
 */
export function campaignSimulator(
  lander: Lander,
): Result<(touchdown: TouchdownCase) => TouchdownResult, readonly FieldProblem[]> {
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) return prepared;
  return accept((touchdown) => runTouchdown(prepared.value, touchdown));
}
