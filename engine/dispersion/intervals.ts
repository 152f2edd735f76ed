/**
 * What a number of successes among independent runs says about the probability behind it.
 *
 * Every bound here takes the runs as independent draws. Sobol' points and Latin hypercubes are not: for those the counts
 * are usually closer to the truth than these intervals say, but nobody has proved it for a given campaign.
 */
import { assert } from '../assert.ts';
import { log } from '../math/exponential.ts';
import { incompleteBeta, incompleteBetaInverse } from '../math/incompleteBeta.ts';
import { normalQuantile } from '../math/normalDistribution.ts';

/** Bounds of a probability [-], 0 to 1. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Successes among runs: whole numbers, 0 <= successes <= runs, at least one run. */
export interface Tally {
  readonly successes: number;
  readonly runs: number;
}

/**
 * Score interval of a probability [-].
 *
 *   (p̂ + z²/2n ± z √(p̂(1 − p̂)/n + z²/4n²)) / (1 + z²/n)                   [Wilson1927]
 *
 * p̂  successes / runs [-]      n  runs      z  normal quantile of (1 + confidence)/2 [-]
 *
 * Covers with the stated confidence on average over p, not for every p; see clopperPearson for that.
 */
export function wilson(tally: Tally, confidence: number): Interval {
  checkTally(tally, confidence);
  const { successes, runs } = tally;
  const z = normalQuantile((1 + confidence) / 2);
  const share = successes / runs;
  const square = (z * z) / runs;
  const center = share + square / 2;
  const half = z * Math.sqrt((share * (1 - share)) / runs + square / (4 * runs));
  // at 0 and at all successes the ends are exact, whatever the rounding
  return {
    low: successes === 0 ? 0 : (center - half) / (1 + square),
    high: successes === runs ? 1 : (center + half) / (1 + square),
  };
}

/** Exact two-sided interval [-]: at least the stated confidence for every p. [ClopperPearson1934] */
export function clopperPearson(tally: Tally, confidence: number): Interval {
  checkTally(tally, confidence);
  const each = (1 + confidence) / 2;
  return { low: lowerBound(tally, each), high: upperBound(tally, each) };
}

/**
 * Largest p that may be claimed as "at least p" with the stated confidence [-].
 *
 *   I_p(k, n − k + 1) = 1 − confidence                        [ClopperPearson1934]; beta form [Olver2010] 8.17.5
 *
 * k  successes      n  runs
 */
export function lowerBound(tally: Tally, confidence: number): number {
  checkTally(tally, confidence);
  const { successes: k, runs: n } = tally;
  if (k === 0) return 0;
  return incompleteBetaInverse(1 - confidence, k, n - k + 1);
}

/** Smallest p that may be claimed as "at most p" with the stated confidence [-]: the mirror of lowerBound. */
export function upperBound(tally: Tally, confidence: number): number {
  checkTally(tally, confidence);
  return 1 - lowerBound({ successes: tally.runs - tally.successes, runs: tally.runs }, confidence);
}

/**
 * Probabilities that differ by no more than this, over their size, are equal but for rounding [-]: half of the runs of a
 * fair coin, three times over, reach a confidence of 7/8 exactly.
 */
const ROUNDING = 1e-12;

/**
 * Whether the runs show with the confidence that p is at least `share`: were it less, so many successes would come with
 * a probability of no more than 1 − confidence. The same statement as lowerBound >= share, without its rounding.
 */
export function showsAtLeast(tally: Tally, share: number, confidence: number): boolean {
  checkTally(tally, confidence);
  const { successes: k, runs: n } = tally;
  if (k === 0) return false;
  if (k === n) return n >= zeroFailureRuns(share, confidence);
  return incompleteBeta(share, k, n - k + 1) <= (1 - confidence) * (1 + ROUNDING);
}

/** Whether the runs show with the confidence that p is below `share`: upperBound < share, without its rounding. */
export function showsBelow(tally: Tally, share: number, confidence: number): boolean {
  checkTally(tally, confidence);
  const { successes: k, runs: n } = tally;
  return k < n && incompleteBeta(1 - share, n - k, k + 1) < (1 - confidence) * (1 - ROUNDING);
}

/**
 * Least number of runs without a failure that shows a reliability with a confidence.
 *
 *   n = ⌈ln(1 − confidence) / ln(reliability)⌉                 from reliability^n ≤ 1 − confidence; [NASA216447]
 */
export function zeroFailureRuns(reliability: number, confidence: number): number {
  checkShare('a reliability', reliability);
  checkShare('a confidence', confidence);
  return Math.max(1, Math.ceil((log(1 - confidence) + ROUNDING) / log(reliability)));
}

export function checkShare(what: string, share: number): void {
  assert(share > 0 && share < 1, `${what} lies between 0 and 1, not ${share}`);
}

function checkTally({ successes, runs }: Tally, confidence: number): void {
  assert(Number.isInteger(runs) && runs >= 1, `an interval needs at least one run, got ${runs}`);
  assert(Number.isInteger(successes) && successes >= 0 && successes <= runs, `${successes} successes of ${runs} runs`);
  checkShare('a confidence', confidence);
}
