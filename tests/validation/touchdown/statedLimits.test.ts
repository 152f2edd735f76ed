import { describe, expect, it } from 'vitest';
import { drawRingArrival } from '../../support/ringArrival.ts';
import { countLimits, noCounts } from './countLimits.ts';

/** A slice of what checkLimits.ts counts in full, where the figures in engine/touchdown/README.md are from. */
const FIRST_SEED = 20_261_130;
const ARRIVALS = 4;
const EVEN = 8;

describe('stated tip limits of random landers, toward even azimuths and square to every edge', () => {
  const counts = noCounts();
  for (let i = 0; i < ARRIVALS; i++)
    countLimits(counts, `ring ${FIRST_SEED + i}`, drawRingArrival(FIRST_SEED + i), EVEN);

  it('[TD21] hold on both sides: it stands just below, and tips just above', () => {
    const { tipsBelow, standsAbove, standsWhereTipping } = counts;
    expect(counts.limits).toBeGreaterThan(ARRIVALS);
    expect({ tipsBelow, standsAbove, standsWhereTipping }).toEqual({
      tipsBelow: [],
      standsAbove: [],
      standsWhereTipping: [],
    });
  });

  it('[TD22] are at no azimuth below the least, and the least tips just above', () => {
    const { tipsBelowLeast, standsAboveLeast, belowLeast } = counts;
    expect({ tipsBelowLeast, standsAboveLeast, belowLeast }).toEqual({
      tipsBelowLeast: [],
      standsAboveLeast: [],
      belowLeast: [],
    });
  });
});
