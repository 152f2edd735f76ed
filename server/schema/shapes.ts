/**
 * A small language in which a view is declared once. From a declaration follow the type of the view (`ViewOf`), the typed
 * state in which it travels and how it is written there (`paperKind`), and how it is read again (`readShape`).
 */

/** Widths on the wire, as the schema library names them, with the whole numbers that each integer holds. */
export const WIDTHS = {
  int8: [-128, 127],
  uint8: [0, 255],
  int16: [-32_768, 32_767],
  uint16: [0, 65_535],
  int32: [-2_147_483_648, 2_147_483_647],
  uint32: [0, 4_294_967_295],
  float32: undefined,
  float64: undefined,
} as const;
export type Width = keyof typeof WIDTHS;

export interface NumberShape {
  readonly kind: 'number';
  readonly width: Width;
}

export interface TextShape {
  readonly kind: 'text';
}

export interface TruthShape {
  readonly kind: 'truth';
}

/** One of a tuple of words; its place in the tuple travels, as uint8. */
export interface WordsShape<Word extends string | number = string | number> {
  readonly kind: 'words';
  readonly words: readonly Word[];
}

export type ScalarShape = NumberShape | TextShape | TruthShape | WordsShape;

/** A structure of its own: one whose fields change together costs two or three bytes more a patch, however many they are. */
export interface GroupShape<Of extends Fields = Fields> {
  readonly kind: 'group';
  readonly fields: Of;
}

/** A group whose fields travel among those of its owner, of which there may be 63 in all. */
export interface InlineShape<Of extends Fields = Fields> {
  readonly kind: 'inline';
  readonly fields: Of;
}

export type ItemShape = ScalarShape | GroupShape;

/** Any number of the same, in order. */
export interface ListShape<Item extends ItemShape = ItemShape> {
  readonly kind: 'list';
  readonly item: Item;
}

export type RequiredShape = ScalarShape | GroupShape | InlineShape | ListShape;

/** A field that a view may lack. */
export interface OptionalShape<Of extends RequiredShape = RequiredShape> {
  readonly kind: 'optional';
  readonly of: Of;
}

export type FieldShape = RequiredShape | OptionalShape;

export interface Fields {
  readonly [name: string]: FieldShape;
}

export const text: TextShape = { kind: 'text' };
export const truth: TruthShape = { kind: 'truth' };

export function number(width: Width): NumberShape {
  return { kind: 'number', width };
}

export function words<const Word extends string | number>(tuple: readonly Word[]): WordsShape<Word> {
  return { kind: 'words', words: tuple };
}

export function group<Of extends Fields>(fields: Of): GroupShape<Of> {
  return { kind: 'group', fields };
}

export function inline<Of extends Fields>(fields: Of): InlineShape<Of> {
  return { kind: 'inline', fields };
}

export function list<Item extends ItemShape>(item: Item): ListShape<Item> {
  return { kind: 'list', item };
}

export function optional<Of extends RequiredShape>(of: Of): OptionalShape<Of> {
  return { kind: 'optional', of };
}

export function isScalar(shape: FieldShape): shape is ScalarShape {
  return shape.kind === 'number' || shape.kind === 'text' || shape.kind === 'truth' || shape.kind === 'words';
}

/** Name on the wire of the one field of an item of a list of scalars. */
export const ITEM_NAME = 'item';

/** Name on the wire of a field of an inlined group: no name of a view has a dot. */
export function inlinedName(group: string, field: string): string {
  return `${group}.${field}`;
}

/** Name on the wire of the truth that says whether an optional structure or list is there. */
export function shownName(field: string): string {
  return `${field}?`;
}
