import { figure, shortAngle } from '../../../engine/figures.ts';
import { describe, expect, it } from 'vitest';
import { numberSources, textTable } from '../../../server/cli/textTable.ts';

describe('a text table', () => {
  const columns = [
    { heading: 'world', align: 'left' },
    { heading: 'speed [m/s]', align: 'right' },
  ] as const;

  it('aligns figures on the right under their heading and leaves no blanks at line ends', () => {
    expect(
      textTable(columns, [
        ['moon', '1.77'],
        ['a long name', '12.00'],
      ]),
    ).toBe(
      [
        'world        speed [m/s]',
        '-----------  -----------',
        'moon                1.77',
        'a long name        12.00',
      ].join('\n'),
    );
  });

  it('prints the headings alone when there is no row', () => {
    expect(textTable(columns, [])).toBe('world  speed [m/s]\n-----  -----------');
  });
});

describe('a figure', () => {
  it('keeps its decimals, writes a small negative without a sign, and a missing value as a dash', () => {
    expect([figure(1.5, 3), figure(-0.00001, 2), figure(-1.25, 1), figure(undefined, 2)]).toEqual([
      '1.500',
      '0.00',
      '-1.3',
      '-',
    ]);
  });
});

describe('an angle in a sentence', () => {
  it('has one decimal, and none when it is whole', () => {
    expect([shortAngle(270), shortAngle(29.97), shortAngle(0.04), shortAngle(12.34)]).toEqual([
      '270',
      '30',
      '0',
      '12.3',
    ]);
  });
});

describe('sources', () => {
  it('get numbers in order of first mention, each listed once', () => {
    const { numberOf, list } = numberSources(['b', 'a', 'b']);
    expect([numberOf('b'), numberOf('a')]).toEqual(['1', '2']);
    expect(list).toBe('sources\n  1  b\n  2  a');
  });
});
