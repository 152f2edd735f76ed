import { describe, expect, it } from 'vitest';
import { createPaperKind } from '../../../server/schema/paperKind.ts';
import { createReader } from '../../../server/schema/reader.ts';
import { group, inline, list, number, optional, text, truth, words } from '../../../server/schema/shapes.ts';

const shape = group({
  percent: number('uint8'),
  lean: number('int8'),
  word: optional(words(['yes', 'no'])),
  pair: inline({ on: truth, by: optional(text) }),
  sizes: list(number('uint16')),
  last: optional(group({ x: number('float64') })),
});
const kind = createPaperKind(shape, 'Paper');
const read = createReader(shape);
const view = { percent: 100, lean: -30, pair: { on: true }, sizes: [1, 2], last: { x: 0.1 } };

describe('a view written into a paper', () => {
  it('is read again as data of its own, without the fields that it lacks', () => {
    const paper = new kind.Class();
    kind.write(paper, view);
    const first = read(paper);
    expect(first).toStrictEqual(view);
    kind.write(paper, { percent: 5, lean: 0, word: 'no', pair: { on: false, by: 'Ada' }, sizes: [] });
    expect(first).toStrictEqual(view);
    expect(read(paper)).toStrictEqual({
      percent: 5,
      lean: 0,
      word: 'no',
      pair: { on: false, by: 'Ada' },
      sizes: [],
    });
  });

  it('is refused, with the name of the field, where it would arrive as another', () => {
    const paper = new kind.Class();
    expect(() => kind.write(paper, { ...view, percent: 256 })).toThrow("'percent' travels as a whole number from 0");
    expect(() => kind.write(paper, { ...view, percent: -1 })).toThrow("'percent'");
    expect(() => kind.write(paper, { ...view, lean: 0.5 })).toThrow("'lean' travels as a whole number from -128 to");
    expect(() => kind.write(paper, { ...view, sizes: [65_536] })).toThrow('65536');
    // a word that the compiler would not let through
    const word: string = 'maybe';
    expect(() => kind.write(paper, Object.assign({ ...view }, { word }) as typeof view)).toThrow(
      "'word' travels as one of yes, no, and cannot as maybe.",
    );
  });
});

describe('a paper of another version', () => {
  const good = { percent: 1, lean: 1, 'pair.on': true, sizes: [{ item: 1 }], 'last?': false };

  it('is read where it holds what is expected', () => {
    expect(read(good)).toStrictEqual({ percent: 1, lean: 1, pair: { on: true }, sizes: [1] });
  });

  it.each([
    ['percent', undefined, "The server sent undefined for 'percent'; this page expects a number."],
    ['word', 7, "The server sent 7 for 'word'; this page expects one of yes, no."],
    ['pair.on', 1, "The server sent 1 for 'pair.on'; this page expects true or false."],
    ['pair.by', 1, "The server sent 1 for 'pair.by'; this page expects text."],
    ['sizes', undefined, "The server sent undefined for 'sizes'; this page expects a list."],
    ['last?', true, "The server sent undefined for 'last'; this page expects a structure."],
  ])('is refused with the name of the field: %s as %s', (name, value, message) => {
    expect(() => read({ ...good, [name]: value })).toThrow(message);
  });
});
