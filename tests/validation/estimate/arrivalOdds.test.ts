import { describe, expect, it } from 'vitest';
import { flyToArrival } from './believedArrival.ts';

/** Other seeds than those of the table in the folder's README. */
const SEEDS = Array.from({ length: 80 }, (_, i) => 5001 + i);

describe('P(stay upright) of descents flown by what is believed', () => {
  it('[ES7] says how many stand, and how far it is off: over 80 descents', () => {
    const arrivals = SEEDS.flatMap((seed) => flyToArrival(seed) ?? []);
    const stood = arrivals.filter((arrival) => arrival.stood).length;
    const told = arrivals.reduce((sum, { odds }) => sum + odds, 0);
    const variance = arrivals.reduce((sum, { odds }) => sum + odds * (1 - odds), 0);
    expect(arrivals.length).toBeGreaterThan(75);
    // both ends occur, and so does doubt
    expect(stood).toBeGreaterThan(10);
    expect(arrivals.length - stood).toBeGreaterThan(10);
    expect(arrivals.filter(({ odds }) => odds > 0.1 && odds < 0.9).length).toBeGreaterThan(5);
    // sum of independent yes and no: 3.3 standard deviations
    expect(Math.abs(stood - told)).toBeLessThan(3.3 * Math.sqrt(variance));
    // and as sharp as it says: mean square of what was told less what came, to half of it
    const brier = arrivals.reduce((sum, { odds, stood: came }) => sum + (odds - Number(came)) ** 2, 0);
    expect(brier / variance).toBeLessThan(1.5);
    expect(brier / variance).toBeGreaterThan(0.5);
  });
});
