/**
 * Algebra of a symmetric STATES x STATES matrix in rows, both halves kept equal to the last bit. All functions change it in place and
 * allocate nothing.
 */
import { STATES } from './state.ts';

/** Scratch, overwritten before each use. */
const APPLIED = new Float64Array(STATES);
const LEFT = new Float64Array(STATES);
const PARTIAL = new Float64Array(STATES * STATES);

/**
 * What the covariance becomes when `factor` times one state is added to another.
 *
 *   P ← E·P·Eᵀ,  E = 1 + factor·e_to·e_fromᵀ
 *
 * A transition is a chain of these, each with the old values of what it adds.
 */
export function addState(covariance: Float64Array, to: number, from: number, factor: number): void {
  const across = covariance[to * STATES + from]!;
  const own = covariance[from * STATES + from]!;
  for (let other = 0; other < STATES; other++) {
    if (other === to) continue;
    const value = covariance[to * STATES + other]! + factor * covariance[from * STATES + other]!;
    covariance[to * STATES + other] = value;
    covariance[other * STATES + to] = value;
  }
  covariance[to * STATES + to]! += factor * (2 * across + factor * own);
}

/** What the covariance becomes when one state is multiplied by `factor`. */
export function scaleState(covariance: Float64Array, state: number, factor: number): void {
  for (let other = 0; other < STATES; other++) {
    if (other === state) continue;
    const value = covariance[state * STATES + other]! * factor;
    covariance[state * STATES + other] = value;
    covariance[other * STATES + state] = value;
  }
  covariance[state * STATES + state]! *= factor * factor;
}

/** Adds to the variance of one state. */
export function addVariance(covariance: Float64Array, state: number, variance: number): void {
  covariance[state * STATES + state]! += variance;
}

/** Variance of the sum of states that `row` weighs. */
export function varianceAlong(covariance: Float64Array, row: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < STATES; i++) {
    const weight = row[i]!;
    if (weight === 0) continue;
    for (let j = 0; j < STATES; j++) sum += weight * covariance[i * STATES + j]! * row[j]!;
  }
  return sum;
}

/**
 * One scalar measurement, in Joseph's form, which stays symmetric and positive for any gain [Groves2013]:
 *
 *   S = H·P·Hᵀ + R,  K = P·Hᵀ / S
 *   P ← (1 − K·H)·P·(1 − K·H)ᵀ + K·R·Kᵀ
 *
 * H  `row`, how the measured value moves with each state       R  `variance` of its noise
 * Writes K into `gain`.
 */
export function measureState(covariance: Float64Array, row: Float64Array, variance: number, gain: Float64Array): void {
  let total = variance;
  for (let i = 0; i < STATES; i++) {
    let sum = 0;
    for (let j = 0; j < STATES; j++) sum += covariance[i * STATES + j]! * row[j]!;
    APPLIED[i] = sum;
    total += row[i]! * sum;
  }
  for (let i = 0; i < STATES; i++) gain[i] = APPLIED[i]! / total;
  // M = (1 − K·H)·P, and M·Hᵀ
  for (let i = 0; i < STATES; i++) {
    let sum = 0;
    for (let j = 0; j < STATES; j++) {
      const value = covariance[i * STATES + j]! - gain[i]! * APPLIED[j]!;
      PARTIAL[i * STATES + j] = value;
      sum += value * row[j]!;
    }
    LEFT[i] = sum;
  }
  // M·(1 − K·H)ᵀ + K·R·Kᵀ
  for (let i = 0; i < STATES; i++)
    for (let j = i; j < STATES; j++) {
      const value = PARTIAL[i * STATES + j]! + (variance * gain[i]! - LEFT[i]!) * gain[j]!;
      covariance[i * STATES + j] = value;
      covariance[j * STATES + i] = value;
    }
}

/** Makes one state forget what it has in common with the others, and sets its variance. */
export function resetState(covariance: Float64Array, state: number, variance: number): void {
  for (let other = 0; other < STATES; other++) {
    covariance[state * STATES + other] = 0;
    covariance[other * STATES + state] = 0;
  }
  covariance[state * STATES + state] = variance;
}
