/**
 * Root of a continuous function of one variable between two points where its sign differs.
 *
 * Method: ITP (interpolate, truncate, project) [Oliveira2020] algorithm 1. Chosen because it never takes more than
 * one evaluation above bisection, whatever the function, and converges faster than linearly at a simple root; and
 * because it is short enough to be read.
 */
import { assert } from '../assert.ts';
import { ROOT_RELATIVE_TOLERANCE } from '../tolerances.ts';

export interface Bracket {
  readonly low: number;
  readonly high: number;
  /**
   * Largest distance of the answer from the root, in the unit of x. Default: ROOT_RELATIVE_TOLERANCE times the larger end
   * of the bracket in magnitude, so give it when the root may be far smaller than both ends.
   */
  readonly tolerance?: number;
}

type RootSearch =
  | { readonly kind: 'root'; readonly x: number; readonly evaluations: number }
  /** The function has the same sign at both ends; its values there are given. */
  | { readonly kind: 'noSignChange'; readonly atLow: number; readonly atHigh: number }
  /** The function was NaN or infinite at x. */
  | { readonly kind: 'notFinite'; readonly x: number };

/** Evaluations ITP may take above bisection. [Oliveira2020] n0 */
const SLACK = 1;
/** How far an interpolated point is moved to the middle: TRUNCATION × width² / first width. [Oliveira2020] κ1, κ2 = 2 */
const TRUNCATION = 0.2;

/** Finds x in [low, high] within the tolerance of a place where f changes sign. Calls f at most bisection's number + 1. */
export function findRoot(f: (x: number) => number, bracket: Bracket): RootSearch {
  const { low, high } = bracket;
  assert(low < high && high - low < Infinity, `a bracket needs low < high, both finite, got ${low} and ${high}`);
  const scale = Math.max(Math.abs(low), Math.abs(high));
  const tolerance = bracket.tolerance ?? ROOT_RELATIVE_TOLERANCE * scale;
  assert(tolerance >= Number.EPSILON * scale, `tolerance ${tolerance} is finer than numbers of size ${scale} are`);

  const atLow = f(low);
  if (!Number.isFinite(atLow)) return { kind: 'notFinite', x: low };
  if (atLow === 0) return { kind: 'root', x: low, evaluations: 1 };
  const atHigh = f(high);
  if (!Number.isFinite(atHigh)) return { kind: 'notFinite', x: high };
  if (atHigh === 0) return { kind: 'root', x: high, evaluations: 2 };
  if (atLow > 0 === atHigh > 0) return { kind: 'noSignChange', atLow, atHigh };
  return narrow(f, { low, high, atLow, atHigh }, tolerance);
}

interface SignChange {
  readonly low: number;
  readonly high: number;
  readonly atLow: number;
  readonly atHigh: number;
}

function narrow(f: (x: number) => number, start: SignChange, tolerance: number): RootSearch {
  const rising = start.atHigh > 0;
  const truncation = TRUNCATION / (start.high - start.low);
  let { low, high, atLow, atHigh } = start;
  let evaluations = 2;
  // half the widest bracket still allowed if bisection from here is to end in time: ε 2^(n_max − j)
  let allowance = tolerance;
  while (allowance < (high - low) / 2) allowance *= 2;
  for (let i = 0; i < SLACK; i++) allowance *= 2;

  while (high - low > 2 * tolerance) {
    const middle = low + (high - low) / 2;
    // interpolate: the secant's root
    const secant = low + (high - low) * (atLow / (atLow - atHigh));
    // truncate: toward the middle; ours: by no less than the tolerance, or rounding would pin the search to one side
    const side = secant < middle ? 1 : -1;
    const shift = Math.max(truncation * (high - low) * (high - low), tolerance);
    const truncated = shift <= Math.abs(middle - secant) ? secant + side * shift : middle;
    // project: onto the points from which bisection would still end in time
    const reach = Math.max(0, allowance - (high - low) / 2);
    const x = Math.abs(truncated - middle) <= reach ? truncated : middle - side * reach;

    const value = f(x);
    evaluations++;
    if (!Number.isFinite(value)) return { kind: 'notFinite', x };
    if (value === 0) return { kind: 'root', x, evaluations };
    if (value > 0 === rising) {
      high = x;
      atHigh = value;
    } else {
      low = x;
      atLow = value;
    }
    allowance /= 2;
  }
  return { kind: 'root', x: low + (high - low) / 2, evaluations };
}
