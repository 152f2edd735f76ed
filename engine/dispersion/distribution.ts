/**
 * Distributions of an input, each as its quantile function: a number u between 0 and 1 goes in, a value comes out. So any
 * point set can drive them, and even points stay even.
 */
import { assert } from '../assert.ts';
import { exp, log } from '../math/exponential.ts';
import { normalProbability, normalQuantile } from '../math/normalDistribution.ts';

/** In the unit of the input. */
export type Distribution =
  | { readonly kind: 'constant'; readonly value: number }
  | { readonly kind: 'uniform'; readonly low: number; readonly high: number }
  | { readonly kind: 'normal'; readonly mean: number; readonly deviation: number }
  /** A normal of this mean and deviation, of which only the part between low and high is left. */
  | {
      readonly kind: 'truncated normal';
      readonly mean: number;
      readonly deviation: number;
      readonly low: number;
      readonly high: number;
    }
  /** Length of a vector of two independent normals of mean 0 and deviation `scale`; cut off at `high` where given. */
  | { readonly kind: 'rayleigh'; readonly scale: number; readonly high?: number }
  | { readonly kind: 'discrete'; readonly choices: readonly Choice<number>[] };

export interface Choice<Value> {
  readonly value: Value;
  /** Chance of this value relative to the other weights [-], above 0. */
  readonly weight: number;
}

export const DISTRIBUTION_KINDS = [
  'constant',
  'uniform',
  'normal',
  'truncated normal',
  'rayleigh',
  'discrete',
] as const satisfies readonly Distribution['kind'][];

/** Two normals that depend on each other, as the components of a residual speed do. */
export interface NormalPair {
  readonly means: readonly [number, number];
  readonly deviations: readonly [number, number];
  /** Correlation coefficient [-], between −1 and 1. */
  readonly correlation: number;
}

/** The value below which a share u of all cases lies; 0 < u < 1. Monotone in u. */
export function quantile(distribution: Distribution, u: number): number {
  switch (distribution.kind) {
    case 'constant':
      return distribution.value;
    case 'uniform':
      return distribution.low + u * (distribution.high - distribution.low);
    case 'normal':
      return distribution.mean + distribution.deviation * normalQuantile(u);
    case 'truncated normal':
      return truncatedNormalQuantile(distribution, u);
    case 'rayleigh':
      return rayleighQuantile(distribution, u);
    case 'discrete':
      return choose(distribution.choices, u);
  }
  return distribution satisfies never;
}

/** Between which values something can come out. */
interface Reach {
  readonly low: number;
  readonly high: number;
}

/** Smallest u of any point set; its mirror 1 − u is the largest. */
const SMALLEST_U = Number.EPSILON / 2;

/** Least and greatest value that any point set can bring out: a normal reaches 8.3 deviations, no farther. */
export function reach(distribution: Distribution): Reach {
  if (distribution.kind !== 'discrete')
    return { low: quantile(distribution, SMALLEST_U), high: quantile(distribution, 1 - SMALLEST_U) };
  const values = distribution.choices.map((choice) => choice.value);
  return { low: Math.min(...values), high: Math.max(...values) };
}

/** How much of the untruncated normal lies between the bounds [-]. */
export function shareKept(distribution: Distribution & { readonly kind: 'truncated normal' }): number {
  const { low, high } = inTail(distribution);
  return normalProbability(high) - normalProbability(low);
}

/**
 * Truncated normal by inversion.
 *
 *   x = μ + σ Φ⁻¹(Φ(α) + u (Φ(β) − Φ(α)))              from the definition of a truncated distribution
 *
 * α, β  the bounds in deviations from the mean [-]. Where both lie above the mean the mirror image is taken, so that the
 * probabilities are small numbers instead of differences from 1.
 */
function truncatedNormalQuantile(
  distribution: Distribution & { readonly kind: 'truncated normal' },
  u: number,
): number {
  const { low, high, isMirrored } = inTail(distribution);
  const below = normalProbability(low);
  const share = isMirrored ? 1 - u : u;
  const z = normalQuantile(below + share * (normalProbability(high) - below));
  const value = distribution.mean + distribution.deviation * (isMirrored ? -z : z);
  // rounding may step over a bound by a unit in the last place
  return Math.min(distribution.high, Math.max(distribution.low, value));
}

function inTail(distribution: Distribution & { readonly kind: 'truncated normal' }): {
  readonly low: number;
  readonly high: number;
  readonly isMirrored: boolean;
} {
  const low = (distribution.low - distribution.mean) / distribution.deviation;
  const high = (distribution.high - distribution.mean) / distribution.deviation;
  return low > 0 ? { low: -high, high: -low, isMirrored: true } : { low, high, isMirrored: false };
}

/**
 * Rayleigh distribution by inversion.
 *
 *   x = σ √(−2 ln(1 − u F)),   F = 1 − e^(−h²/2σ²)          [JohnsonKotz1994] ch. 18
 *
 * σ  scale      h  cut-off; F = 1 without one
 */
function rayleighQuantile({ scale, high }: { readonly scale: number; readonly high?: number }, u: number): number {
  if (high === undefined) return scale * Math.sqrt(-2 * log(1 - u));
  const kept = 1 - exp((-high * high) / (2 * scale * scale));
  return Math.min(high, scale * Math.sqrt(-2 * log(1 - u * kept)));
}

/** The choice in whose share of [0, 1) the number u falls, in the order given. */
export function choose<Value>(choices: readonly Choice<Value>[], u: number): Value {
  let total = 0;
  for (const { weight } of choices) total += weight;
  let left = u * total;
  const chosen = choices.find(({ weight }) => (left -= weight) < 0) ?? choices[choices.length - 1];
  assert(chosen !== undefined, 'a discrete distribution has at least one choice');
  return chosen.value;
}

/** The same for both values of a pair. */
export function pairReach(pair: NormalPair): readonly [Reach, Reach] {
  // the second value mixes two normals, so it may reach √2 times as far
  const far = Math.SQRT2 * normalQuantile(1 - SMALLEST_U);
  const about = (mean: number, deviation: number): Reach => ({
    low: mean - far * deviation,
    high: mean + far * deviation,
  });
  return [about(pair.means[0], pair.deviations[0]), about(pair.means[1], pair.deviations[1])];
}

/**
 * Both values of a correlated pair.
 *
 *   x = μ₁ + σ₁ z₁,   y = μ₂ + σ₂ (ρ z₁ + √(1 − ρ²) z₂),   z = Φ⁻¹(u)      bivariate normal, [JohnsonKotz1972] ch. 36
 */
export function pairQuantile(pair: NormalPair, u1: number, u2: number): readonly [number, number] {
  const { means, deviations, correlation } = pair;
  const first = normalQuantile(u1);
  const second = correlation * first + Math.sqrt(1 - correlation * correlation) * normalQuantile(u2);
  return [means[0] + deviations[0] * first, means[1] + deviations[1] * second];
}
