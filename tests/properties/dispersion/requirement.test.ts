import { assert, constant, double, integer, pre, property, record } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from '../../../engine/dispersion/requirement.ts';

/** Chance of `least` successes or more in n draws at p, summed term by term. */
function tailFrom(least: number, n: number, p: number): number {
  let term = p ** n;
  let sum = 0;
  for (let k = n; k >= least; k--) {
    sum += term;
    term *= (k / (n - k + 1)) * ((1 - p) / p);
  }
  return sum;
}

const wanted = record({
  fraction: double({ min: 0.2, max: 0.995, noNaN: true }),
  confidence: double({ min: 0.5, max: 0.999, noNaN: true }),
});
const tally = integer({ min: 1, max: 150 }).chain((runs) =>
  record({
    runs: constant(runs),
    // few failures, where verdicts change
    successes: integer({ min: 0, max: Math.min(runs, 12) }).map((failures) => runs - failures),
  }),
);

describe('a verdict', () => {
  it('[DI7] is what the binomial sum says, and agrees with the bounds it names', () => {
    assert(
      property(tally, wanted, ({ successes, runs }, { fraction, confidence }) => {
        const verdict = judge({ successes, runs }, { fraction, confidence });
        const doubt = 1 - confidence;
        const above = tailFrom(successes, runs, fraction);
        const below = 1 - tailFrom(successes + 1, runs, fraction);
        // sums of this length are good to 1e-11; no verdict hangs on less
        pre(Math.abs(above - doubt) > 1e-10 && Math.abs(below - doubt) > 1e-10);
        const kind = above < doubt ? 'met' : below < doubt ? 'not met' : 'undecided';
        expect(verdict.kind).toBe(kind);
        expect(verdict.atLeast >= fraction).toBe(kind === 'met');
        expect(verdict.atMost < fraction).toBe(kind === 'not met');
      }),
      { numRuns: 600 },
    );
  });

  it('[DI7] needs the least number of runs for which it would be met with the failures seen', () => {
    assert(
      property(tally, wanted, ({ successes, runs }, requirement) => {
        const verdict = judge({ successes, runs }, requirement);
        if (verdict.kind !== 'undecided') return;
        const more = verdict.runsIfNoMoreFail ?? Number.NaN;
        const after = (count: number): string =>
          judge({ successes: successes + count, runs: runs + count }, requirement).kind;
        expect(more).toBeGreaterThanOrEqual(1);
        expect(after(more)).toBe('met');
        expect(after(more - 1)).toBe('undecided');
      }),
      { numRuns: 600 },
    );
  });
});
