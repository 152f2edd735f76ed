import { ArraySchema, Schema, schema, t, type FieldsAndMethods } from '@colyseus/schema';
import { scalarToWire, scalarType } from './scalarToWire.ts';
import {
  ITEM_NAME,
  inlinedName,
  isScalar,
  shownName,
  type FieldShape,
  type Fields,
  type GroupShape,
  type ItemShape,
  type ListShape,
  type OptionalShape,
  type ScalarShape,
} from './shapes.ts';
import type { ViewOf } from './viewOf.ts';

/** A structure of the schema library; its fields by their names on the wire. */
export type Paper = Schema & { [name: string]: unknown };

/** A class of papers for views of one shape, and how a view is written into one. */
interface PaperKind<View> {
  readonly Class: new () => Paper;
  /** Only what differs from what stands there travels. Throws, naming the field, on what its width cannot carry. */
  readonly write: (paper: Paper, view: View) => void;
}

/** What a field of a view is in the paper of its owner; its value is undefined where the view lacks it. */
interface Part {
  readonly builders: FieldsAndMethods;
  readonly write: (paper: Paper, value: unknown) => void;
}

/**
 * The kind of paper for a shape.
 *
 * Every structure outside of lists exists from the start, with a truth beside an optional one that says whether it is shown.
 * Items of lists are structures, scalars too: the schema library does not send a list of bare scalars that is attached after
 * a client's view was given the paper, and a change to an item that was added since the last patch shows a client who joined in between both.
 */
export function createPaperKind<Shape extends GroupShape>(shape: Shape, name: string): PaperKind<ViewOf<Shape>> {
  return groupKind(shape, name);
}

function groupKind({ fields }: GroupShape, name: string): PaperKind<unknown> {
  const { builders, write } = fieldsPart(fields, (field) => field);
  return { Class: schema(builders, name), write: onceEach(write) };
}

/** Views are never written into: the very object that stands on a paper already is not looked through again. */
function onceEach<On extends object>(write: (on: On, view: unknown) => void): (on: On, view: unknown) => void {
  const written = new WeakMap<On, unknown>();
  return (on, view) => {
    if (written.get(on) === view) return;
    write(on, view);
    written.set(on, view);
  };
}

function partOf(shape: FieldShape, name: string): Part {
  switch (shape.kind) {
    case 'optional':
      return optionalPart(shape, name);
    case 'inline':
      return fieldsPart(shape.fields, (field) => inlinedName(name, field));
    case 'group':
      return groupPart(shape, name);
    case 'list':
      return listPart(shape, name);
    case 'number':
    case 'text':
    case 'truth':
    case 'words':
      return scalarPart(shape, name);
  }
  return shape satisfies never;
}

function scalarPart(shape: ScalarShape, name: string): Part {
  const toWire = scalarToWire(shape, name);
  return {
    builders: { [name]: t[scalarType(shape)]() },
    write(paper, value) {
      paper[name] = value === undefined ? undefined : toWire(value);
    },
  };
}

/** All fields of a group, in the paper that is its own or, inlined, in that of its owner. */
function fieldsPart(fields: Fields, nameOf: (field: string) => string): Part {
  const parts = Object.entries(fields).map(([field, shape]) => ({ field, part: partOf(shape, nameOf(field)) }));
  return {
    builders: Object.fromEntries(parts.flatMap(({ part }) => Object.entries(part.builders))),
    write(paper, view) {
      if (isRecord(view)) for (const { field, part } of parts) part.write(paper, view[field]);
    },
  };
}

function groupPart(shape: GroupShape, name: string): Part {
  const kind = groupKind(shape, name);
  return {
    builders: { [name]: t.ref(kind.Class) },
    write: (paper, view) => kind.write(structureOf(paper[name], name), view),
  };
}

function optionalPart({ of }: OptionalShape, name: string): Part {
  const part = partOf(of, name);
  if (isScalar(of)) return part;
  const shown = shownName(name);
  return {
    builders: { [shown]: t.boolean(), ...part.builders },
    write(paper, value) {
      paper[shown] = value !== undefined;
      if (value !== undefined) part.write(paper, value);
    },
  };
}

function listPart({ item }: ListShape, name: string): Part {
  const kind = itemKind(item, name);
  const writeItems = onceEach((items: ArraySchema<unknown>, values) => {
    shrink(items, values).forEach((value, i) => {
      kind.write(structureOf((items[i] ??= new kind.Class()), name), value);
    });
  });
  return {
    builders: { [name]: t.array(kind.Class) },
    write: (paper, values) => writeItems(listOf(paper[name], name), values),
  };
}

function itemKind(item: ItemShape, name: string): PaperKind<unknown> {
  if (!isScalar(item)) return groupKind(item, name);
  const { builders, write } = scalarPart(item, ITEM_NAME);
  return { Class: schema(builders, name), write };
}

/** Takes off the end of a list what the new one has no place for; the new one. */
function shrink(items: ArraySchema<unknown>, values: unknown): readonly unknown[] {
  const next: readonly unknown[] = Array.isArray(values) ? values : [];
  while (items.length > next.length) items.pop();
  return next;
}

function structureOf(value: unknown, name: string): Paper {
  if (isPaper(value)) return value;
  throw new Error(`'${name}' is no structure`);
}

function listOf(value: unknown, name: string): ArraySchema<unknown> {
  if (value instanceof ArraySchema) return value;
  throw new Error(`'${name}' is no list`);
}

function isPaper(value: unknown): value is Paper {
  return value instanceof Schema;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
