import { hasTipped, runTouchdown } from '../../../engine/touchdown/index.ts';
import type { MarginBand } from '../../../engine/table/index.ts';
import { bandOf } from '../../../engine/table/index.ts';
import type { PlausibleArrival } from './plausibleArrivals.ts';

/** Of the arrivals that the published counts are over. */
export const SEED = 20_261_130;

interface Count {
  runs: number;
  falls: number;
}

/** How many arrivals come in each band, by the speed at the contact over the limit that was read before, and how many of them fall in the simulation. */
export function countBands(draw: () => PlausibleArrival, arrivals: number): Record<MarginBand | 'none', Count> {
  const counts: Record<MarginBand | 'none', Count> = {
    desired: { runs: 0, falls: 0 },
    adequate: { runs: 0, falls: 0 },
    thin: { runs: 0, falls: 0 },
    outside: { runs: 0, falls: 0 },
    none: { runs: 0, falls: 0 },
  };
  for (let i = 0; i < arrivals; i++) {
    const { kernel, conditions, speed, read } = draw();
    const limit = read?.limit ?? 0;
    const count = counts[read === undefined ? 'none' : limit > 0 ? bandOf(speed / limit) : 'outside'];
    count.runs += 1;
    if (hasTipped(runTouchdown(kernel, conditions, { only: 'tipping' }))) count.falls += 1;
  }
  return counts;
}
