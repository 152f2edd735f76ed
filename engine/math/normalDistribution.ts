/** The standard normal distribution and its quantiles, the same bits on every JavaScript engine; see trig.ts for why. */
import { assert } from '../assert.ts';
import { erfc, polynomial } from './errorFunction.ts';
import { log } from './exponential.ts';

/**
 * Probability that a standard normal variable is at most z [-], of any number but NaN.
 *
 *   Φ(z) = erfc(−z/√2) / 2                             definition
 *
 * Relative error below (4 + z²) × 2.3e-16, the z² because z/√2 is rounded before the tail is taken.
 */
export function normalProbability(z: number): number {
  return 0.5 * erfc(-z * Math.SQRT1_2);
}

/** Coefficients a0…a7 / 1, b1…b7 of [Wichura1988], PPND16, rounded to doubles: |p − 1/2| ≤ 0.425. */
const CENTER_P = [
  3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087,
  33430.57558358813, 2509.0809287301227,
];
const CENTER_Q = [
  1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271, 28729.085735721943,
  5226.495278852854,
];
/** c0…c7 / 1, d1…d7: tails, r = √(−ln p) ≤ 5. */
const TAIL_P = [
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684, 0.2417807251774506,
  0.022723844989269184, 0.0007745450142783414,
];
const TAIL_Q = [
  1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
  0.0005475938084995345, 1.0507500716444169e-9,
];
/** e0…e7 / 1, f1…f7: far tails, r > 5. */
const FAR_P = [
  6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
  0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
];
const FAR_Q = [
  1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 1.8463183175100548e-5,
  1.421511758316446e-7, 2.0442631033899397e-15,
];

/**
 * Quantile of the standard normal distribution: the z with Φ(z) = p, 0 < p < 1 [-].
 *
 * Algorithm AS 241, PPND16 [Wichura1988], accurate to about 1 part in 10^16 in exact arithmetic; in doubles the relative
 * error stays below 1e-15 for p from 1e-300 to 1/2, and above 1/2 for the p actually given.
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) assert(false, `normalQuantile needs a probability between 0 and 1, got ${p}`);
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(CENTER_P, r)) / polynomial(CENTER_Q, r);
  }
  const r = Math.sqrt(-log(Math.min(p, 1 - p)));
  const z =
    r <= 5
      ? polynomial(TAIL_P, r - 1.6) / polynomial(TAIL_Q, r - 1.6)
      : polynomial(FAR_P, r - 5) / polynomial(FAR_Q, r - 5);
  return q < 0 ? -z : z;
}
