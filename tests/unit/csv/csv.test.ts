import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { formatCsv, tableOf } from '../../../engine/csv.ts';

describe('a table as CSV', () => {
  it('puts the caution and the notes above it as comments', () => {
    expect(formatCsv({ names: ['a', 'b'], rows: [[1, 'x']] }, ['PARTIAL'])).toBe(`# ${CAUTION}\n# PARTIAL\na,b\n1,x\n`);
  });

  it('quotes what would break a line into other cells, and leaves a missing value empty', () => {
    const rows = [['a,b', 'say "so"', 'two\nlines', null, undefined, true]];
    expect(
      formatCsv({ names: ['1', '2', '3', '4', '5', '6'], rows })
        .split('\n')
        .slice(2)
        .join('\n'),
    ).toBe('"a,b","say ""so""","two\nlines",,,true\n');
  });

  it('of records has every field of any of them as a column', () => {
    const records = [{ a: 1 }, { a: 2, b: [3, 4] }, { c: { d: 1 } }];
    expect(tableOf(records)).toEqual({
      names: ['a', 'b', 'c'],
      rows: [
        [1, undefined, undefined],
        [2, '3 4', undefined],
        [undefined, undefined, '{"d":1}'],
      ],
    });
  });
});
