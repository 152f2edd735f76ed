/** Which input moves an answer: variance shares by a designed campaign, or rank correlation from the runs one has. */
import { assert } from '../assert.ts';
import type { PointSet } from './pointSet.ts';

/** Share of the variance of the answer that a factor accounts for [-]. */
export interface VarianceShares {
  /** Alone: expected loss of variance if this factor were known. */
  readonly first: number;
  /** With all its interactions: variance that would remain if all but this factor were known. */
  readonly total: number;
}

/**
 * How a campaign is laid out for variance shares: a factor is an input, or a group of inputs that depend on each other,
 * since shares are defined only between factors that do not.
 */
export interface VarianceDesign {
  readonly basePoints: number;
  readonly factors: number;
  /** The factor that each coordinate of a case belongs to, from 0. */
  readonly factorOf: readonly number[];
}

/** Runs of the design: base points times (factors + 2). */
export function designRuns(design: VarianceDesign): number {
  return design.basePoints * (design.factors + 2);
}

/**
 * Coordinates of a run of the design: for each base point the run of A, then of B, then of A with one factor after the
 * other taken from B [Saltelli2010]. `base` has twice as many dimensions as a case has coordinates: A's, then B's.
 */
export function designPoint(base: PointSet, design: VarianceDesign, run: number): readonly number[] {
  const count = design.factorOf.length;
  assert(base.dimensions === 2 * count, `a design of ${count} coordinates needs ${2 * count} dimensions`);
  const point = Math.floor(run / (design.factors + 2));
  const place = run % (design.factors + 2);
  return design.factorOf.map((factor, j) =>
    base.coordinate(point, place === 1 || place === factor + 2 ? j + count : j),
  );
}

/**
 * First-order and total shares of each factor from the answers of a variance design, in the order of its runs.
 *
 *   S_j  = (1/N) Σ f(B)_i (f(A_B^j)_i − f(A)_i) / V             [Saltelli2010] table 2, (b)
 *   ST_j = (1/2N) Σ (f(A)_i − f(A_B^j)_i)² / V                  [Jansen1999]; [Saltelli2010] table 2, (f)
 *
 * V  variance of the 2N answers to A and B, whose mean is taken off all answers first: that changes no expectation, and
 *    keeps the product in S_j from drowning in a large mean.
 *
 * Undefined when the answers do not vary. Estimates: for few points S_j may come out slightly negative.
 */
export function varianceShares(answers: ArrayLike<number>, factors: number): readonly VarianceShares[] | undefined {
  const block = factors + 2;
  const count = answers.length / block;
  assert(Number.isInteger(count) && count >= 1, `${answers.length} answers are no whole number of blocks of ${block}`);
  const at = (i: number, place: number): number => answers[i * block + place] ?? NaN;
  let sum = 0;
  for (let i = 0; i < count; i++) sum += at(i, 0) + at(i, 1);
  const mean = sum / (2 * count);
  let variance = 0;
  for (let i = 0; i < count; i++) variance += squared(at(i, 0) - mean) + squared(at(i, 1) - mean);
  variance /= 2 * count;
  if (!(variance > 0)) return undefined;
  return Array.from({ length: factors }, (_, j) => {
    let first = 0;
    let total = 0;
    for (let i = 0; i < count; i++) {
      const change = at(i, j + 2) - at(i, 0);
      first += (at(i, 1) - mean) * change;
      total += change * change;
    }
    return { first: first / count / variance, total: total / (2 * count) / variance };
  });
}

/**
 * Rank correlation of two quantities [-], −1 to 1: +1 when one always rises with the other, however crookedly.
 *
 *   ρ = Σ (r_i − r̄)(s_i − s̄) / √(Σ (r_i − r̄)² Σ (s_i − s̄)²)       [Spearman1904]; ties share their mean rank
 *
 * Undefined when one of the two does not vary.
 */
export function rankCorrelation(a: ArrayLike<number>, b: ArrayLike<number>): number | undefined {
  assert(a.length === b.length, `${a.length} values cannot be paired with ${b.length}`);
  const ranksA = ranks(a);
  const ranksB = ranks(b);
  const middle = (a.length + 1) / 2;
  let together = 0;
  let alone = 0;
  let other = 0;
  for (let i = 0; i < ranksA.length; i++) {
    const da = (ranksA[i] ?? 0) - middle;
    const db = (ranksB[i] ?? 0) - middle;
    together += da * db;
    alone += da * da;
    other += db * db;
  }
  return alone > 0 && other > 0 ? together / Math.sqrt(alone * other) : undefined;
}

/** Ranks from 1; equal values share the mean of the ranks they take up. */
function ranks(values: ArrayLike<number>): Float64Array {
  const order = Uint32Array.from({ length: values.length }, (_, i) => i);
  order.sort((i, j) => (values[i] ?? 0) - (values[j] ?? 0) || i - j);
  const result = new Float64Array(values.length);
  let start = 0;
  while (start < order.length) {
    let end = start + 1;
    while (end < order.length && values[order[end] ?? 0] === values[order[start] ?? 0]) end++;
    for (let k = start; k < end; k++) result[order[k] ?? 0] = (start + 1 + end) / 2;
    start = end;
  }
  return result;
}

function squared(x: number): number {
  return x * x;
}
