/**
 * Points of the unit cube that drive a campaign. Any coordinate of any point can be asked for alone, and lies strictly
 * between 0 and 1, so that every inverse distribution can take it.
 */
import { assert } from '../assert.ts';
import { counterUniform, counterWords } from '../math/counterRandom.ts';
import { createPermutation } from '../math/permutation.ts';
import { SOBOL_DIMENSIONS, sobolWord } from '../math/sobol.ts';

export const SAMPLING_METHODS = ['sobol', 'latin', 'plain'] as const;
export type SamplingMethod = (typeof SAMPLING_METHODS)[number];

export interface PointSet {
  readonly dimensions: number;
  /** Number of points [-]. */
  readonly size: number;
  /** Whether the points are independent draws, as the intervals assume. */
  readonly independent: boolean;
  /** Strictly between 0 and 1. Point from 0 to size − 1, dimension from 0. */
  coordinate(point: number, dimension: number): number;
}

interface PointSetOptions {
  readonly method: SamplingMethod;
  readonly dimensions: number;
  readonly size: number;
  /** Whole number from 0. */
  readonly seed: number;
}

/** Most points of a set: what a permutation holds. */
const MOST_POINTS = 1073741824; // 2^30

/** Streams of random numbers of one seed: coordinates, shufflings and shifts never share one. */
const COORDINATES = 0;
const SHUFFLINGS = 1_000_000;
const SHIFTS = 2_000_000;

const TWO_TO_20 = 1048576;
const TWO_TO_32 = 4294967296;

export function createPointSet(options: PointSetOptions): PointSet {
  const { method, dimensions, size } = options;
  assert(
    Number.isInteger(dimensions) && dimensions >= 0,
    `a point has a whole number of dimensions, not ${dimensions}`,
  );
  assert(Number.isInteger(size) && size >= 1 && size <= MOST_POINTS, `a point set has 1 to 2^30 points, not ${size}`);
  switch (method) {
    case 'plain':
      return plainPoints(options);
    case 'latin':
      return latinHypercube(options);
    case 'sobol':
      return sobolPoints(options);
  }
  return method satisfies never;
}

/** Independent uniform draws. */
function plainPoints({ dimensions, size, seed }: PointSetOptions): PointSet {
  return {
    dimensions,
    size,
    independent: true,
    coordinate: (point, dimension) => counterUniform(seed, point, COORDINATES + dimension),
  };
}

/**
 * Latin hypercube: in every dimension exactly one point in each of `size` equal slices.
 *
 *   x_ij = (π_j(i) + u_ij) / n                              [McKay1979]
 *
 * π_j  random permutation of dimension j      u_ij  uniform in (0, 1)      n  number of points
 */
function latinHypercube({ dimensions, size, seed }: PointSetOptions): PointSet {
  const shufflings = Array.from({ length: dimensions }, (_, j) => createPermutation(size, seed, SHUFFLINGS + j));
  return {
    dimensions,
    size,
    independent: false,
    coordinate(point, dimension) {
      const slice = shufflings[dimension]?.at(point) ?? 0;
      // 20 bits inside the slice: the sum is exact, so that no point can be rounded up to 1
      const place = (counterWords(seed, point, COORDINATES + dimension)[0] >>> 12) + 0.5;
      return (slice + place / TWO_TO_20) / size;
    },
  };
}

/**
 * Sobol' points, each dimension shifted by its own random word of the seed (a digital shift: exclusive or of the binary
 * digits, [DickPillichshammer2010] sec. 16.1) and set in the middle of its cell of 2^-32. The shift keeps the evenness of
 * every prefix and makes each coordinate by itself uniform over the seeds. Use 2^k points where you can.
 */
function sobolPoints({ dimensions, size, seed }: PointSetOptions): PointSet {
  assert(
    dimensions <= SOBOL_DIMENSIONS,
    `Sobol' points have at most ${SOBOL_DIMENSIONS} dimensions, not ${dimensions}`,
  );
  const shifts = Uint32Array.from({ length: dimensions }, (_, j) => counterWords(seed, 0, SHIFTS + j)[0]);
  return {
    dimensions,
    size,
    independent: false,
    coordinate(point, dimension) {
      const word = sobolWord(point, dimension) ^ (shifts[dimension] ?? 0);
      return ((word >>> 0) + 0.5) / TWO_TO_32;
    },
  };
}
