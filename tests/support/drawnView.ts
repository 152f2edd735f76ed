import * as fc from 'fast-check';
import { WIDTHS, type FieldShape, type GroupShape, type Width } from '../../server/schema/shapes.ts';
import type { ViewOf } from '../../server/schema/viewOf.ts';

const LONGEST_LIST = 4;

/** Any view of a shape: lists of zero to four items, optional fields there or not. */
export function drawnView<Shape extends GroupShape>(shape: Shape): fc.Arbitrary<ViewOf<Shape>> {
  return drawn(shape) as fc.Arbitrary<ViewOf<Shape>>;
}

function drawn(shape: FieldShape): fc.Arbitrary<unknown> {
  switch (shape.kind) {
    case 'number':
      return drawnNumber(shape.width);
    case 'text':
      return fc.string({ maxLength: 24, unit: 'grapheme' });
    case 'truth':
      return fc.boolean();
    case 'words':
      return fc.constantFrom(...shape.words);
    case 'list':
      return fc.array(drawn(shape.item), { maxLength: LONGEST_LIST });
    case 'optional':
      return drawn(shape.of);
    case 'group':
    case 'inline': {
      const fields = Object.entries(shape.fields);
      const requiredKeys = fields.filter(([, field]) => field.kind !== 'optional').map(([name]) => name);
      return fc.record(Object.fromEntries(fields.map(([name, field]) => [name, drawn(field)])), {
        requiredKeys,
        noNullPrototype: true,
      });
    }
  }
  return shape satisfies never;
}

/** Infinity included. Not minus zero, which the wire does not tell from zero when it replaces it, and nothing that is no number. */
function drawnNumber(width: Width): fc.Arbitrary<number> {
  const range = WIDTHS[width];
  if (range !== undefined) return fc.integer({ min: range[0], max: range[1] });
  const numbers = width === 'float32' ? fc.float({ noNaN: true }) : fc.double({ noNaN: true });
  return numbers.map((value) => (value === 0 ? 0 : value));
}
