/**
 * Sobol' points: a sequence that fills the unit cube evenly in every prefix, for campaigns and sensitivities.
 *
 *   x_i,j = ⊕ v_k,j  over the bits k set in i ⊕ ⌊i/2⌋                 [JoeKuo2008] sec. 2, Gray-code order
 *   m_k = 2 c_1 m_{k−1} ⊕ … ⊕ 2^s m_{k−s} ⊕ m_{k−s},   v_k = m_k / 2^k     [JoeKuo2008] eq. (2)
 *
 * v_k,j  direction numbers of dimension j [-]     c  coefficients of its primitive polynomial of degree s over GF(2)
 *
 * Any point can be computed alone. Point 0 is the origin, and the early points are on the edges of cells; scramble them
 * with a digital shift before an inverse distribution sees them (dispersion/pointSet.ts does).
 */
import { assert } from '../assert.ts';

/**
 * Per dimension the primitive polynomial, its coefficients as bits, and the first m_1 … m_s. [JoeKuo2008], file
 * new-joe-kuo-6.21201 (search criterion 6), rows 1 to 32, as carried by SciPy 1.17.1. Another table of the same authors
 * (2003) circulates and gives other points from index 2 on in higher dimensions.
 */
const DIRECTIONS: readonly (readonly [polynomial: number, ...initial: number[]])[] = [
  [1, 1],
  [3, 1],
  [7, 1, 3],
  [11, 1, 3, 1],
  [13, 1, 1, 1],
  [19, 1, 1, 3, 3],
  [25, 1, 3, 5, 13],
  [37, 1, 1, 5, 5, 17],
  [41, 1, 1, 5, 5, 5],
  [47, 1, 1, 7, 11, 19],
  [55, 1, 1, 5, 1, 1],
  [59, 1, 1, 1, 3, 11],
  [61, 1, 3, 5, 5, 31],
  [67, 1, 3, 3, 9, 7, 49],
  [91, 1, 1, 1, 15, 21, 21],
  [97, 1, 3, 1, 13, 27, 49],
  [103, 1, 1, 1, 15, 7, 5],
  [109, 1, 3, 1, 15, 13, 25],
  [115, 1, 1, 5, 5, 19, 61],
  [131, 1, 3, 7, 11, 23, 15, 103],
  [137, 1, 3, 7, 13, 13, 15, 69],
  [143, 1, 1, 3, 13, 7, 35, 63],
  [145, 1, 3, 5, 9, 1, 25, 53],
  [157, 1, 3, 1, 13, 9, 35, 107],
  [167, 1, 3, 1, 5, 27, 61, 31],
  [171, 1, 1, 5, 11, 19, 41, 61],
  [185, 1, 3, 5, 3, 3, 13, 69],
  [191, 1, 1, 7, 13, 1, 19, 1],
  [193, 1, 3, 7, 5, 13, 19, 59],
  [203, 1, 1, 3, 9, 25, 29, 41],
  [211, 1, 3, 5, 13, 23, 1, 55],
  [213, 1, 3, 7, 3, 13, 59, 17],
];

export const SOBOL_DIMENSIONS = DIRECTIONS.length;
const BITS = 32;
const TWO_TO_32 = 4294967296;
/** v_k,j × 2^32, dimension by dimension. */
const DIRECTION_WORDS = directionWords();

/** Coordinate of a point, 0 ≤ x < 1, exact: a whole number of 2^-32 [-]. Index 0 to 2^32 − 1, dimension from 0. */
export function sobolCoordinate(index: number, dimension: number): number {
  return sobolWord(index, dimension) / TWO_TO_32;
}

/** The same times 2^32, as an unsigned word, for scrambling. */
export function sobolWord(index: number, dimension: number): number {
  assert(Number.isInteger(index) && index >= 0 && index < TWO_TO_32, `no Sobol' point ${index}`);
  assert(Number.isInteger(dimension) && dimension >= 0 && dimension < SOBOL_DIMENSIONS, `no dimension ${dimension}`);
  let gray = (index ^ (index >>> 1)) >>> 0;
  let word = 0;
  for (let k = dimension * BITS; gray !== 0; k++) {
    if ((gray & 1) === 1) word ^= DIRECTION_WORDS[k] ?? 0;
    gray >>>= 1;
  }
  return word >>> 0;
}

/** Rows of the direction table, for its structural test. */
export function sobolDirections(): readonly (readonly [polynomial: number, ...initial: number[]])[] {
  return DIRECTIONS;
}

function directionWords(): Uint32Array {
  const words = new Uint32Array(SOBOL_DIMENSIONS * BITS);
  for (const [dimension, [polynomial, ...initial]] of DIRECTIONS.entries()) {
    const row = words.subarray(dimension * BITS, (dimension + 1) * BITS);
    // the first dimension has no polynomial: all its m are 1 (van der Corput)
    const degree = dimension === 0 ? 0 : initial.length;
    for (let k = 1; k <= BITS; k++) {
      const m = degree === 0 ? 1 : initial[k - 1];
      row[k - 1] = m === undefined ? recurred(row, k - 1, polynomial, degree) : m << (BITS - k);
    }
  }
  return words;
}

/** v_k from the s before it: on words, v_k = c_1 v_{k−1} ⊕ … ⊕ v_{k−s} ⊕ (v_{k−s} / 2^s). */
function recurred(row: Uint32Array, k: number, polynomial: number, degree: number): number {
  const oldest = row[k - degree] ?? 0;
  let word = oldest ^ (oldest >>> degree);
  for (let i = 1; i < degree; i++) {
    if (((polynomial >>> (degree - i)) & 1) === 1) word ^= row[k - i] ?? 0;
  }
  return word >>> 0;
}
