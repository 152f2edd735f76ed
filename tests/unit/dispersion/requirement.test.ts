import { describe, expect, it } from 'vitest';
import { lowerBound, upperBound } from '../../../engine/dispersion/intervals.ts';
import { judge, MOST_RUNS, runsWithFailures } from '../../../engine/dispersion/requirement.ts';

const WANTED = { fraction: 0.95, confidence: 0.95 };

describe('a requirement', () => {
  it('[DI7] is met from 59 runs without a failure on and undecided with 58', () => {
    expect(judge({ successes: 59, runs: 59 }, WANTED).kind).toBe('met');
    const short = judge({ successes: 58, runs: 58 }, WANTED);
    expect(short).toMatchObject({
      kind: 'undecided',
      runsIfNoMoreFail: 1,
      runsAtPresentRate: { runs: 1, verdict: 'met' },
    });
  });

  it('[DI7] is not met when even the upper bound stays below it', () => {
    const verdict = judge({ successes: 80, runs: 100 }, WANTED);
    expect(verdict.kind).toBe('not met');
    expect(verdict.atMost).toBeLessThan(0.95);
  });

  it('[DI7] names the further runs that decide it: with so many it is decided, with one fewer it is not', () => {
    const tally = { successes: 96, runs: 100 };
    const verdict = judge(tally, WANTED);
    if (verdict.kind !== 'undecided') throw new Error(`expected undecided, got ${verdict.kind}`);
    const hopeful = verdict.runsIfNoMoreFail ?? Number.NaN;
    expect(judge({ successes: 96 + hopeful, runs: 100 + hopeful }, WANTED).kind).toBe('met');
    expect(judge({ successes: 95 + hopeful, runs: 99 + hopeful }, WANTED).kind).toBe('undecided');
    expect(verdict.runsAtPresentRate?.verdict).toBe('met');
    const total = 100 + (verdict.runsAtPresentRate?.runs ?? 0);
    expect(lowerBound({ successes: Math.floor(total * 0.96), runs: total }, 0.95)).toBeGreaterThanOrEqual(0.95);
  });

  it('[DI7] foresees "not met" where the rate seen is below what is asked', () => {
    const verdict = judge({ successes: 94, runs: 100 }, WANTED);
    if (verdict.kind !== 'undecided') throw new Error(`expected undecided, got ${verdict.kind}`);
    expect(verdict.runsAtPresentRate?.verdict).toBe('not met');
    const total = 100 + (verdict.runsAtPresentRate?.runs ?? 0);
    expect(upperBound({ successes: Math.ceil(total * 0.94), runs: total }, 0.95)).toBeLessThan(0.95);
  });

  it('[DI7] foresees nothing where the rate seen is exactly what is asked', () => {
    const verdict = judge({ successes: 95, runs: 100 }, WANTED);
    if (verdict.kind !== 'undecided') throw new Error(`expected undecided, got ${verdict.kind}`);
    expect(verdict.runsAtPresentRate).toBeUndefined();
    expect(verdict.runsIfNoMoreFail).toBeGreaterThan(0);
    expect(verdict.runsIfNoMoreFail).toBeLessThan(MOST_RUNS);
  });

  it('[DI7] is met where the bound is the requirement itself: three of three for one half, at 7/8', () => {
    const half = { fraction: 0.5, confidence: 0.875 };
    expect(judge({ successes: 3, runs: 3 }, half)).toMatchObject({ kind: 'met', atLeast: 0.5 });
    expect(judge({ successes: 2, runs: 2 }, half)).toMatchObject({ kind: 'undecided', runsIfNoMoreFail: 1 });
    // 0.9^2 = 1 - 0.19, which doubles do not give exactly
    expect(judge({ successes: 2, runs: 2 }, { fraction: 0.9, confidence: 0.19 }).kind).toBe('met');
    expect(judge({ successes: 1, runs: 1 }, { fraction: 0.9, confidence: 0.19 })).toMatchObject({
      runsIfNoMoreFail: 1,
    });
  });

  it('[DI7] projects the rate seen in whole failures: at 299 of 300, 600 runs have two of them', () => {
    const verdict = judge({ successes: 299, runs: 300 }, { fraction: 0.99, confidence: 0.95 });
    const total = 300 + ((verdict.kind === 'undecided' && verdict.runsAtPresentRate?.runs) || Number.NaN);
    const failures = Math.ceil(total / 300);
    expect(judge({ successes: total - failures, runs: total }, { fraction: 0.99, confidence: 0.95 }).kind).toBe('met');
    expect(total - failures).toBe(Math.floor((total * 299) / 300));
  });

  it('[DI7] asks for more runs the more of them fail', () => {
    const needed = [0, 1, 2, 3, 10].map((failures) => runsWithFailures(failures, WANTED));
    // 59, 93, 124, 153: the one-sided Wilks numbers of orders 1 to 4 [Wilks1941], [NuttWallis2004]
    expect(needed.slice(0, 4)).toEqual([59, 93, 124, 153]);
    expect(needed[4]).toBeGreaterThan(needed[3] ?? 0);
    expect(runsWithFailures(0, { fraction: 1 - 1e-9, confidence: 0.95 })).toBeUndefined();
  });
});
