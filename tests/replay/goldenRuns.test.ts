import { describe, expect, it } from 'vitest';
import { flyGolden, GOLDEN_RUNS } from './goldenRuns.ts';

describe('golden runs', () => {
  it.each(GOLDEN_RUNS)('[RE1] come out to the bit: $name', (golden) => {
    const { outcome, ticks, hash, state } = flyGolden(golden);
    expect({ outcome, ticks, hash }).toEqual({ outcome: golden.outcome, ticks: golden.ticks, hash: golden.hash });
    // equal hashes of nothing would be worth nothing: the lander came down and stood on, or fell off, its legs
    expect(state.touchdown).toBeDefined();
    expect(state.y).toBeLessThan(10);
    expect(state.legs.some(({ stroke }) => stroke > 0.005)).toBe(true);
    expect(state.touchdown?.facing).toBe(golden.facing);
    expect(Math.abs(state.angle) > 1).toBe(golden.manner === 'hasty');
  });

  it('[RE1] differ from one another', () => {
    expect(new Set(GOLDEN_RUNS.map(({ hash }) => hash)).size).toBe(GOLDEN_RUNS.length);
  });
});
