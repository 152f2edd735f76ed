/** Bounds on a measured quantity from its sorted values alone, whatever its distribution. */
import { assert } from '../assert.ts';
import { incompleteBeta } from '../math/incompleteBeta.ts';
import { checkShare } from './intervals.ts';

/** Which share of all cases is to lie inside a bound, and how sure one wants to be of that [-]. */
export interface Coverage {
  readonly coverage: number;
  readonly confidence: number;
}

/**
 * Confidence that at least `coverage` of all cases lie below the r-th largest (or above the r-th smallest) of n
 * independent values [-].
 *
 *   1 − I_γ(n − r + 1, r) = I_{1−γ}(r, n − r + 1)              [Wilks1941]; beta form [Olver2010] 8.17.5
 *
 * γ  coverage [-]      n  runs      r  rank from the extreme, 1 is the extreme itself
 *
 * Exact for a continuous quantity, at least this for any.
 */
export function toleranceConfidence(runs: number, rank: number, coverage: number): number {
  assert(Number.isInteger(runs) && Number.isInteger(rank) && rank >= 1 && rank <= runs, `rank ${rank} of ${runs} runs`);
  checkShare('a coverage', coverage);
  return incompleteBeta(1 - coverage, rank, runs - rank + 1);
}

/**
 * The rank farthest from the extreme whose value is still a bound for the coverage with the confidence; undefined where
 * not even the extreme is one, for want of runs.
 */
export function toleranceRank(runs: number, wanted: Coverage): number | undefined {
  checkShare('a confidence', wanted.confidence);
  if (runs < 1 || toleranceConfidence(runs, 1, wanted.coverage) < wanted.confidence) return undefined;
  let holds = 1;
  let fails = runs + 1;
  while (fails - holds > 1) {
    const middle = Math.floor((holds + fails) / 2);
    if (toleranceConfidence(runs, middle, wanted.coverage) >= wanted.confidence) holds = middle;
    else fails = middle;
  }
  return holds;
}

/** Fewest runs for which the r-th extreme is a one-sided bound [Wilks1941]: 59, 93, 124 for r = 1, 2, 3 at 95 % / 95 %. */
export function toleranceRuns(rank: number, wanted: Coverage): number {
  checkShare('a confidence', wanted.confidence);
  let fails = rank - 1;
  let holds = rank;
  while (toleranceConfidence(holds, rank, wanted.coverage) < wanted.confidence) {
    fails = holds;
    holds *= 2;
  }
  while (holds - fails > 1) {
    const middle = Math.floor((holds + fails) / 2);
    if (toleranceConfidence(middle, rank, wanted.coverage) >= wanted.confidence) holds = middle;
    else fails = middle;
  }
  return holds;
}

/**
 * Rank of a quantile among n values, ascending from 1.
 *
 *   ⌈np⌉                                               inverse of the empirical distribution; [HyndmanFan1996] definition 1
 *
 * Always one of the values: nothing is interpolated between runs.
 */
export function quantileRank(count: number, p: number): number {
  checkShare('a quantile', p);
  assert(count >= 1, 'a quantile needs at least one value');
  return Math.min(count, Math.max(1, Math.ceil(count * p)));
}
