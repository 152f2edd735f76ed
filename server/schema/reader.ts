import {
  ITEM_NAME,
  inlinedName,
  isScalar,
  shownName,
  type FieldShape,
  type Fields,
  type GroupShape,
  type ItemShape,
  type RequiredShape,
} from './shapes.ts';
import type { ViewOf } from './viewOf.ts';

/** A structure of the wire, its fields by their names there. */
type Owner = Readonly<Record<string, unknown>>;

/**
 * Reads the view that a structure of this shape carries: plain data of its own, which later patches do not touch; what is absent has no
 * field. Throws, naming the field, when the structure has another shape: page and server are then of two versions.
 */
export function createReader<Shape extends GroupShape>(shape: Shape): (paper: unknown) => ViewOf<Shape>;
// that it reads what `ViewOf` says is held by a property test over drawn views, not by the compiler
export function createReader(shape: GroupShape): (paper: unknown) => unknown {
  return valueReader(shape, 'paper');
}

function valueReader(shape: Exclude<RequiredShape, { kind: 'inline' }>, name: string): (value: unknown) => unknown {
  switch (shape.kind) {
    case 'number':
      return (value) => (typeof value === 'number' ? value : mismatch(name, 'a number', value));
    case 'text':
      return (value) => (typeof value === 'string' ? value : mismatch(name, 'text', value));
    case 'truth':
      return (value) => (typeof value === 'boolean' ? value : mismatch(name, 'true or false', value));
    case 'words': {
      const { words } = shape;
      return (value) =>
        (typeof value === 'number' ? words[value] : undefined) ?? mismatch(name, `one of ${words.join(', ')}`, value);
    }
    case 'list': {
      const read = itemReader(shape.item, name);
      return (value) => (isIterable(value) ? Array.from(value, (item) => read(item)) : mismatch(name, 'a list', value));
    }
    case 'group': {
      const read = fieldsReader(shape.fields, (field) => field);
      return (value) => (isOwner(value) ? read(value) : mismatch(name, 'a structure', value));
    }
  }
  return shape satisfies never;
}

function itemReader(item: ItemShape, name: string): (value: unknown) => unknown {
  const read = valueReader(item, name);
  return isScalar(item) ? (value) => read(isOwner(value) ? value[ITEM_NAME] : undefined) : read;
}

function fieldsReader(fields: Fields, nameOf: (field: string) => string): (owner: Owner) => object {
  const readers = Object.entries(fields).map(([field, shape]) => ({ field, read: fieldReader(shape, nameOf(field)) }));
  return (owner) => {
    const view: Record<string, unknown> = {};
    for (const { field, read } of readers) {
      const value = read(owner);
      if (value !== undefined) view[field] = value;
    }
    return view;
  };
}

/** Of the field with this name on the wire; undefined where it is absent. */
function fieldReader(shape: FieldShape, name: string): (owner: Owner) => unknown {
  if (shape.kind === 'inline') return fieldsReader(shape.fields, (field) => inlinedName(name, field));
  if (shape.kind !== 'optional') {
    const read = valueReader(shape, name);
    return (owner) => read(owner[name]);
  }
  const read = fieldReader(shape.of, name);
  if (isScalar(shape.of)) return (owner) => (owner[name] === undefined ? undefined : read(owner));
  const shown = shownName(name);
  return (owner) => (owner[shown] === true ? read(owner) : undefined);
}

function isOwner(value: unknown): value is Owner {
  return typeof value === 'object' && value !== null;
}

function isIterable(value: unknown): value is Iterable<unknown> {
  return typeof value === 'object' && value !== null && Symbol.iterator in value;
}

function mismatch(name: string, expected: string, value: unknown): never {
  throw new Error(`The server sent ${String(value)} for '${name}'; this page expects ${expected}.`);
}
