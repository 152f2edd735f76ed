import { describe, expect, it } from 'vitest';
import {
  createProblemList,
  describe as describeValue,
  fieldPath,
  MOST_PROBLEMS,
  readFields,
  readList,
  readNumber,
  report,
} from '../../../engine/fieldReader.ts';
import { nearestName } from '../../../engine/nearestName.ts';

describe('reading foreign fields', () => {
  it('writes a problem down once: an absent field is told as missing and not again by its reader', () => {
    const list = createProblemList('sample');
    const fields = readFields(list, { a: 1 }, 'top', ['a', 'b'], ['c']);
    expect(readNumber(list, fields?.b, 'top.b', { least: 0, most: 1, unit: 'm' })).toBeUndefined();
    expect(list.problems).toEqual([
      { code: 'sample/missing-field', path: 'top.b', expected: 'a value', came: 'nothing' },
    ]);
  });

  it('takes a field that holds undefined for a missing one', () => {
    const list = createProblemList('sample');
    readFields(list, { a: undefined }, '', ['a']);
    expect(list.problems).toMatchObject([{ code: 'sample/missing-field', path: 'a' }]);
  });

  it('accepts both ends of a range, and asks for whole numbers where it says so', () => {
    const list = createProblemList('sample');
    const range = { least: 2, most: 5, unit: '-', whole: true };
    expect([2, 5].map((value) => readNumber(list, value, 'n', range))).toEqual([2, 5]);
    expect([1, 6, 2.5].map((value) => readNumber(list, value, 'n', range))).toEqual([undefined, undefined, undefined]);
    expect(list.problems.map((problem) => problem.expected)).toEqual(Array(3).fill('a whole number from 2 to 5'));
  });

  it('gives a list only when every item of it was read', () => {
    const list = createProblemList('sample');
    const rule = { least: 0, most: 3, of: 'numbers' };
    const read = (value: unknown) =>
      readList(list, value, 'n', rule, (item, path) => readNumber(list, item, path, { least: 0, most: 9, unit: 'm' }));
    expect(read([1, 2])).toEqual([1, 2]);
    expect(read([1, -2])).toBeUndefined();
    expect(list.problems.map((problem) => problem.path)).toEqual(['n[1]']);
  });

  it('stops listing at its budget with one entry that says so', () => {
    const list = createProblemList('sample');
    for (let i = 0; i < 1000; i++) report(list, 'odd', { path: `p${i}`, expected: 'even', came: 'odd' });
    expect(list.problems).toHaveLength(MOST_PROBLEMS + 1);
    expect(list.problems.at(-1)?.code).toBe('sample/more-problems');
  });

  it('describes any value in a few words', () => {
    const values = [undefined, null, [1, 2], 'x'.repeat(100), Number.NaN, false, {}, 3n, Symbol('s'), () => 1];
    const words = values.map(describeValue);
    expect(words).toEqual([
      'nothing',
      'null',
      'a list of 2',
      `text "${'x'.repeat(40)}" and more`,
      'NaN',
      'false',
      'an object',
      'a bigint',
      'a symbol',
      'a function',
    ]);
  });

  it('quotes a name in a path that is no plain word', () => {
    expect(fieldPath('', 'mass')).toBe('mass');
    expect(fieldPath('parts[0]', 'mass')).toBe('parts[0].mass');
    expect(fieldPath('parts[0]', 'a b')).toBe('parts[0]["a b"]');
    expect(fieldPath('', 'y'.repeat(1000)).length).toBeLessThan(60);
  });
});

describe('the nearest name', () => {
  const legal = ['radius', 'length', 'axis', 'maxThrust', 'minThrust'];

  it.each([
    ['radious', 'radius'],
    ['lenght', 'length'],
    ['MaxThrust', 'maxThrust'],
    ['maxTrust', 'maxThrust'],
    ['axes', 'axis'],
    ['a', undefined],
    ['color', undefined],
    ['', undefined],
  ])('to %j is %j', (mistyped, expected) => {
    expect(nearestName(mistyped, legal)).toBe(expected);
  });
});
