import { describe, expect, it } from 'vitest';
import { createPermutation } from '../../../engine/math/permutation.ts';

function list(seed: number, stream: number): number[] {
  const permutation = createPermutation(50, seed, stream);
  return Array.from({ length: 50 }, (_, i) => permutation.at(i));
}

describe('a shuffling by place', () => {
  it.each([1, 2, 3, 15, 16, 17, 255, 256, 257, 1000, 4097])('of %i places is a permutation', (size) => {
    const permutation = createPermutation(size, 5, 9);
    const goals = new Set(Array.from({ length: size }, (_, i) => permutation.at(i)));
    expect(goals.size).toBe(size);
    expect(Math.max(...goals)).toBe(size - 1);
  });

  it('takes each place of a small range to each goal equally often over the seeds', () => {
    const size = 5;
    const seeds = 20_000;
    const counts = Array.from({ length: size * size }, () => 0);
    for (let seed = 0; seed < seeds; seed++) {
      const permutation = createPermutation(size, seed, 0);
      for (let i = 0; i < size; i++) {
        const cell = i * size + permutation.at(i);
        counts[cell] = (counts[cell] ?? 0) + 1;
      }
    }
    // each count is binomial with deviation 56.6; five deviations
    for (const count of counts) expect(Math.abs(count - seeds / size)).toBeLessThan(5 * 56.6);
  });

  it('reaches all six orders of three places about equally often', () => {
    const orders = new Map<string, number>();
    const seeds = 12_000;
    for (let seed = 0; seed < seeds; seed++) {
      const permutation = createPermutation(3, seed, 1);
      const order = [0, 1, 2].map((i) => permutation.at(i)).join('');
      orders.set(order, (orders.get(order) ?? 0) + 1);
    }
    expect(orders.size).toBe(6);
    // deviation 40.8; five deviations
    for (const count of orders.values()) expect(Math.abs(count - seeds / 6)).toBeLessThan(5 * 40.8);
  });

  it('differs between seeds and between streams', () => {
    expect(list(1, 0)).not.toEqual(list(2, 0));
    expect(list(1, 0)).not.toEqual(list(1, 1));
    expect(list(1, 0)).toEqual(list(1, 0));
  });

  it('refuses places and sizes that do not exist', () => {
    expect(() => createPermutation(0, 1, 1)).toThrow(/places/);
    expect(() => createPermutation(10, 1, 1).at(10)).toThrow(/no place/);
    expect(() => createPermutation(10, 1, 1).at(Number.NaN)).toThrow(/no place/);
  });
});
