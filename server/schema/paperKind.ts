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

/** Of the view that was written into a structure last. On the structure itself: a table beside it is slow to look into. */
const WRITTEN = Symbol('written');

/** A structure of the schema library; its fields by their names on the wire. */
export type Paper = Schema & { [name: string]: unknown; [WRITTEN]?: View | undefined };

/** A class of papers for views of one shape, and how a view is written into one. */
interface PaperKind<View> {
  readonly Class: new () => Paper;
  /** Only what differs from what stands there travels. Throws, naming the field, on what its width cannot carry. */
  readonly write: (paper: Paper, view: View) => void;
}

type View = Readonly<Record<string, unknown>>;

/** Puts the value of a field of a view into a paper; undefined where the view lacks it. */
type Write = (paper: Paper, value: unknown) => void;

/** What a field of a view is in the paper of its owner. */
interface Part {
  readonly builders: FieldsAndMethods;
  /** How it is written into papers of the class that was made with its builders. */
  readonly writeTo: (Class: new () => Paper) => Write;
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
  const parts = partsOf(fields, (field) => field);
  const Class = schema(buildersOf(parts), name);
  const writes = writesTo(Class, parts);
  return {
    Class,
    // views are never written into: of the view that was written last, whatever is the very same stands there already
    write(paper, view) {
      if (!isView(view)) return;
      const before = paper[WRITTEN];
      if (before === view) return;
      // one that is refused half-way leaves nothing to go by
      paper[WRITTEN] = undefined;
      for (const { field, write } of writes) {
        const value = view[field];
        if (before === undefined || before[field] !== value) write(paper, value);
      }
      paper[WRITTEN] = view;
    },
  };
}

function partOf(shape: FieldShape, name: string): Part {
  switch (shape.kind) {
    case 'optional':
      return optionalPart(shape, name);
    case 'inline':
      return inlinePart(shape.fields, name);
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
    writeTo(Class) {
      const set = setterOf(Class, name);
      return (paper, value) => set(paper, value === undefined ? undefined : toWire(value));
    },
  };
}

/** Sets a field of the schema library. It is looked for once, since a name that is another each time is slow to look for. */
function setterOf(Class: new () => Paper, name: string): Write {
  const field = Object.getOwnPropertyDescriptor(Class.prototype, name);
  return (paper, value) => field?.set?.call(paper, value);
}

/** The parts of a group, by the fields of its views. */
function partsOf(fields: Fields, nameOf: (field: string) => string) {
  return Object.entries(fields).map(([field, shape]) => ({ field, part: partOf(shape, nameOf(field)) }));
}

function buildersOf(parts: ReturnType<typeof partsOf>): FieldsAndMethods {
  return Object.fromEntries(parts.flatMap(({ part }) => Object.entries(part.builders)));
}

function writesTo(Class: new () => Paper, parts: ReturnType<typeof partsOf>) {
  return parts.map(({ field, part }) => ({ field, write: part.writeTo(Class) }));
}

/** All fields of a group, in the paper of its owner. */
function inlinePart(fields: Fields, name: string): Part {
  const parts = partsOf(fields, (field) => inlinedName(name, field));
  return {
    builders: buildersOf(parts),
    writeTo(Class) {
      const writes = writesTo(Class, parts);
      return (paper, view) => {
        if (isView(view)) for (const { field, write } of writes) write(paper, view[field]);
      };
    },
  };
}

function groupPart(shape: GroupShape, name: string): Part {
  const kind = groupKind(shape, name);
  return {
    builders: { [name]: t.ref(kind.Class) },
    writeTo: () => (paper, view) => kind.write(structureOf(paper[name], name), view),
  };
}

function optionalPart({ of }: OptionalShape, name: string): Part {
  const part = partOf(of, name);
  if (isScalar(of)) return part;
  const shown = shownName(name);
  return {
    builders: { [shown]: t.boolean(), ...part.builders },
    writeTo(Class) {
      const [show, write] = [setterOf(Class, shown), part.writeTo(Class)];
      return (paper, value) => {
        show(paper, value !== undefined);
        if (value !== undefined) write(paper, value);
      };
    },
  };
}

function listPart({ item }: ListShape, name: string): Part {
  const kind = itemKind(item, name);
  // the library's lists are slow to look into
  const itemsOf = new WeakMap<ArraySchema<unknown>, Paper[]>();
  const write: Write = (paper, value) => {
    const list = listOf(paper[name], name);
    const values: readonly unknown[] = Array.isArray(value) ? value : [];
    const items = itemsOf.get(list) ?? [];
    itemsOf.set(list, items);
    for (; items.length > values.length; items.pop()) list.pop();
    for (const [i, one] of values.entries()) {
      const kept = items[i];
      const item = kept ?? new kind.Class();
      kind.write(item, one);
      if (kept !== undefined) continue;
      items.push(item);
      list.push(item);
    }
  };
  return { builders: { [name]: t.array(kind.Class) }, writeTo: () => write };
}

function itemKind(item: ItemShape, name: string): PaperKind<unknown> {
  if (!isScalar(item)) return groupKind(item, name);
  const { builders, writeTo } = scalarPart(item, ITEM_NAME);
  const Class = schema(builders, name);
  return { Class, write: writeTo(Class) };
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

function isView(value: unknown): value is View {
  return typeof value === 'object' && value !== null;
}
