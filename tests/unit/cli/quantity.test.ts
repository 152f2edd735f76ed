import { describe, expect, it } from 'vitest';
import { legNumbersParser, padHeightsParser, quantityParser, textParser } from '../../../server/cli/quantity.ts';

describe('a number on the command line', () => {
  const parse = quantityParser({ unit: 'deg', least: -80, most: 80 });

  it.each([
    ['5', 5],
    ['-12.5', -12.5],
    ['+.5', 0.5],
    ['1e1', 10],
    ['0', 0],
    [' 7 ', 7],
  ])('reads %j', (text, value) => {
    expect(parse(text, undefined)).toBe(value);
  });

  it.each([
    '',
    ' ',
    'five',
    'NaN',
    'Infinity',
    '-Infinity',
    '1e999',
    '0x10',
    '5deg',
    '1,5',
    '1_000',
    '--5',
    '81',
    '-80.01',
  ])('refuses %j and says what it expects', (text) => {
    expect(() => parse(text, undefined)).toThrow('Expected a number from -80 to 80 deg.');
  });

  it('refuses a second value instead of letting the last one win', () => {
    expect(() => parse('5', 5)).toThrow('Given more than once.');
    expect(() => textParser('moon', 'moon')).toThrow('Given more than once.');
    expect(() => legNumbersParser('1', [1])).toThrow('Given more than once.');
  });
});

describe('leg numbers on the command line', () => {
  it('are read in the order given', () => {
    expect(legNumbersParser('3, 1', undefined)).toEqual([3, 1]);
  });

  it.each(['', '0', '1,', '1,1', '-1', '1.5', 'one', '1;2', '1000'])('refuses %j', (text) => {
    expect(() => legNumbersParser(text, undefined)).toThrow('Expected leg numbers');
  });
});

describe('rocks and holes on the command line', () => {
  it('are read in the order given', () => {
    expect(padHeightsParser('3:-0.5, 1 : 2', undefined)).toEqual([
      { leg: 3, height: -0.5 },
      { leg: 1, height: 2 },
    ]);
  });

  it.each(['', '1', '1:', ':1', '0:1', '1:1:1', '1:1,', '1:1,1:2', '1:x', '1:10.1', '-1:1', '1.5:1', '1=1', '1000:1'])(
    'refuses %j',
    (text) => {
      expect(() => padHeightsParser(text, undefined)).toThrow('Expected legs and heights');
    },
  );
});
