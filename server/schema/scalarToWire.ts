import { WIDTHS, type ScalarShape, type Width } from './shapes.ts';

/** The schema library's name of the type in which a scalar travels. */
export function scalarType(shape: ScalarShape): Width | 'string' | 'boolean' {
  switch (shape.kind) {
    case 'number':
      return shape.width;
    case 'text':
      return 'string';
    case 'truth':
      return 'boolean';
    case 'words':
      return 'uint8';
  }
  return shape satisfies never;
}

/** Puts a value as it travels. Throws where that would be another one: a number that its width has no room for, a word not in the tuple. */
export function scalarToWire(shape: ScalarShape, name: string): (value: unknown) => unknown {
  if (shape.kind === 'words') {
    const { words } = shape;
    const places = new Map<unknown, number>(words.map((word, i) => [word, i]));
    return (value) => places.get(value) ?? cannotCarry(name, value, `one of ${words.join(', ')}`);
  }
  const range = shape.kind === 'number' ? WIDTHS[shape.width] : undefined;
  if (range === undefined) return (value) => value;
  const [least, most] = range;
  return (value) =>
    typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most
      ? value
      : cannotCarry(name, value, `a whole number from ${least} to ${most}`);
}

function cannotCarry(name: string, value: unknown, expected: string): never {
  throw new RangeError(`'${name}' travels as ${expected}, and cannot as ${String(value)}.`);
}
