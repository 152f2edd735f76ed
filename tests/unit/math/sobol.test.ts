import { describe, expect, it } from 'vitest';
import { SOBOL_DIMENSIONS, sobolDirections, sobolWord } from '../../../engine/math/sobol.ts';

/** x to the power e modulo a polynomial over GF(2), polynomials as bits. */
function powerOfX(e: bigint, polynomial: number, degree: number): number {
  const times = (a: number, b: number): number => {
    let product = 0;
    let [left, right] = [a, b];
    while (right > 0) {
      if ((right & 1) === 1) product ^= left;
      right >>= 1;
      left <<= 1;
      if ((left >> degree) & 1) left ^= polynomial;
    }
    return product;
  };
  let result = 1;
  let base = degree === 1 ? 1 : 2;
  for (let left = e; left > 0n; left >>= 1n) {
    if (left & 1n) result = times(result, base);
    base = times(base, base);
  }
  return result;
}

function primeFactors(n: number): number[] {
  const factors: number[] = [];
  let rest = n;
  for (let p = 2; p * p <= rest; p++) {
    if (rest % p === 0) factors.push(p);
    while (rest % p === 0) rest /= p;
  }
  if (rest > 1) factors.push(rest);
  return factors;
}

describe('the direction table', () => {
  it('has a different primitive polynomial over GF(2) in every row after the first', () => {
    const rows = sobolDirections().slice(1);
    expect(new Set(rows.map(([polynomial]) => polynomial)).size).toBe(SOBOL_DIMENSIONS - 1);
    for (const [polynomial, ...initial] of rows) {
      const degree = initial.length;
      expect(31 - Math.clz32(polynomial)).toBe(degree);
      const order = 2 ** degree - 1;
      expect(powerOfX(BigInt(order), polynomial, degree), `row ${polynomial}`).toBe(1);
      const proper = primeFactors(order).filter((factor) => factor !== order);
      for (const factor of proper) expect(powerOfX(BigInt(order / factor), polynomial, degree)).not.toBe(1);
    }
  });

  it('starts each row with odd numbers m_k below 2^k', () => {
    for (const [, ...initial] of sobolDirections())
      for (const [k, m] of initial.entries()) {
        expect(m % 2).toBe(1);
        expect(m).toBeLessThan(2 ** (k + 1));
      }
  });
});

describe("Sobol' points", () => {
  it('put exactly one of the first 2^k points into each of 2^k slices of every dimension', () => {
    const bits = 10;
    for (let j = 0; j < SOBOL_DIMENSIONS; j++) {
      const slices = new Set<number>();
      for (let i = 0; i < 1 << bits; i++) slices.add(sobolWord(i, j) >>> (32 - bits));
      expect(slices.size).toBe(1 << bits);
    }
  });

  it('refuse an index or a dimension that they do not have', () => {
    for (const [i, j] of [
      [-1, 0],
      [0.5, 0],
      [4294967296, 0],
      [Number.NaN, 0],
      [0, SOBOL_DIMENSIONS],
      [0, -1],
    ] as const)
      expect(() => sobolWord(i, j)).toThrow(/no (Sobol' point|dimension)/);
  });
});
