import { describe, expect, it } from 'vitest';
import { findRoot, type Bracket } from '../../../engine/math/roots.ts';
import { ROOT_RELATIVE_TOLERANCE } from '../../../engine/tolerances.ts';

interface Case {
  readonly name: string;
  readonly f: (x: number) => number;
  readonly bracket: Bracket;
  readonly root: number;
}

const SMOOTH: readonly Case[] = [
  // real root of x³ − x − 2 in radicals: ∛(1 + √(26/27)) + ∛(1 − √(26/27))
  { name: 'a cubic', f: (x) => x * x * x - x - 2, bracket: { low: 1, high: 2 }, root: 1.5213797068045676 },
  { name: 'a parabola', f: (x) => x * x - 2, bracket: { low: 0, high: 2 }, root: Math.SQRT2 },
  { name: 'a line', f: (x) => 1 / 3 - x, bracket: { low: -1, high: 1 }, root: 1 / 3 },
  { name: 'an inverse', f: (x) => 1 / x - 0.125, bracket: { low: 1, high: 100 }, root: 8 },
];
const HARD: readonly Case[] = [
  { name: 'a step', f: (x) => (x < 0.7 ? -1 : 1), bracket: { low: 0, high: 1 }, root: 0.7 },
  { name: 'a ninth power', f: (x) => (x - 0.3) ** 9, bracket: { low: 0, high: 1 }, root: 0.3 },
  { name: 'a far end', f: (x) => x * x - 2, bracket: { low: 0, high: 1e6 }, root: Math.SQRT2 },
  { name: 'a steep S', f: (x) => Math.tanh(1e4 * (x + 0.4)), bracket: { low: -1, high: 1 }, root: -0.4 },
];

/** Evaluations bisection needs to come within the tolerance, both ends included. */
function bisectionCount({ low, high }: Bracket, tolerance: number): number {
  let count = 2;
  for (let half = (high - low) / 2; half > tolerance; half /= 2) count++;
  return count;
}

describe('findRoot', () => {
  it.each([...SMOOTH, ...HARD])('[MA4] comes within the tolerance of the root of $name', ({ f, bracket, root }) => {
    const tolerance = ROOT_RELATIVE_TOLERANCE * Math.max(Math.abs(bracket.low), Math.abs(bracket.high));
    const search = findRoot(f, bracket);
    expect(search.kind).toBe('root');
    if (search.kind !== 'root') return;
    // 1e-15: the zero of the rounded function itself
    expect(Math.abs(search.x - root)).toBeLessThan(tolerance + 1e-15 * Math.abs(root));
  });

  it.each([...SMOOTH, ...HARD])(
    '[MA4] never takes more than one evaluation above bisection: $name',
    ({ f, bracket }) => {
      for (const tolerance of [1e-2, 1e-5, 1e-9]) {
        let calls = 0;
        const search = findRoot((x) => (calls++, f(x)), { ...bracket, tolerance });
        expect(search).toMatchObject({ kind: 'root', evaluations: calls });
        expect(calls).toBeLessThanOrEqual(bisectionCount(bracket, tolerance) + 1);
      }
    },
  );

  it('[MA4] takes less than half of bisection where the function is smooth, also in a bracket about zero', () => {
    const about: Case = {
      name: 'a cubic about zero',
      f: (x) => x * x * x + x - 1,
      bracket: { low: -1, high: 1 },
      root: 0,
    };
    for (const { f, bracket, name } of [...SMOOTH.slice(0, 3), about]) {
      const search = findRoot(f, { ...bracket, tolerance: 1e-12 });
      if (search.kind !== 'root') throw new Error(search.kind);
      expect(search.evaluations, name).toBeLessThan(bisectionCount(bracket, 1e-12) / 2);
    }
  });

  it('[MA4] gives an end of the bracket when the root lies there', () => {
    expect(findRoot((x) => x, { low: 0, high: 1 })).toEqual({ kind: 'root', x: 0, evaluations: 1 });
    expect(findRoot((x) => x - 1, { low: 0, high: 1 })).toEqual({ kind: 'root', x: 1, evaluations: 2 });
  });

  it('[MA4] says so, with the values, when the sign does not change', () => {
    expect(findRoot((x) => x * x + 1, { low: -1, high: 2 })).toEqual({ kind: 'noSignChange', atLow: 2, atHigh: 5 });
  });

  it('[MA4] says where the function was no number', () => {
    expect(findRoot((x) => 1 / x, { low: 0, high: 1 })).toEqual({ kind: 'notFinite', x: 0 });
    expect(findRoot(() => NaN, { low: 0, high: 1 })).toEqual({ kind: 'notFinite', x: 0 });
    const search = findRoot((x) => (x > 0.2 && x < 0.8 ? NaN : x - 0.5), { low: 0, high: 1 });
    expect(search).toMatchObject({ kind: 'notFinite' });
  });

  it.each([
    [{ low: 1, high: 1 }, /low < high/],
    [{ low: 0, high: NaN }, /low < high/],
    [{ low: -Infinity, high: 0 }, /low < high, both finite/],
    [{ low: 0, high: 8, tolerance: 1e-16 }, /tolerance 1e-16 is finer than numbers of size 8 are/],
  ])('[MA4] refuses the bracket %o', (bracket, message) => {
    expect(() => findRoot((x) => x - 0.5, bracket)).toThrow(message);
  });
});
