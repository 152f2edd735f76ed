import type {
  Fields,
  GroupShape,
  InlineShape,
  ListShape,
  NumberShape,
  OptionalShape,
  TextShape,
  TruthShape,
  WordsShape,
} from './shapes.ts';

/** The plain data that a shape declares. */
export type ViewOf<Shape> = Shape extends NumberShape
  ? number
  : Shape extends TextShape
    ? string
    : Shape extends TruthShape
      ? boolean
      : Shape extends WordsShape<infer Word>
        ? Word
        : Shape extends ListShape<infer Item>
          ? readonly ViewOf<Item>[]
          : Shape extends GroupShape<infer Of> | InlineShape<infer Of>
            ? FieldsView<Of>
            : never;

type FieldsView<Of extends Fields> = Flat<
  { readonly [Name in keyof Of as Of[Name] extends OptionalShape ? never : Name]: ViewOf<Of[Name]> } & {
    readonly [Name in keyof Of as Of[Name] extends OptionalShape ? Name : never]?: Of[Name] extends OptionalShape<
      infer Required
    >
      ? ViewOf<Required>
      : never;
  }
>;

/** The same type without the intersection in it. */
type Flat<Type> = { [Name in keyof Type]: Type[Name] };

/**
 * What keeps a declaration from being exactly the wanted type, in words that name the field; never where nothing does.
 * Unlike assignability it also finds an optional field that was forgotten, or one that is optional on one side only.
 */
export type Disagreement<Declared, Wanted, Where extends string = 'view'> = [Declared, Wanted] extends [
  readonly (infer DeclaredItem)[],
  readonly (infer WantedItem)[],
]
  ? Disagreement<DeclaredItem, WantedItem, `${Where}[]`>
  : [Declared, Wanted, Extract<Declared | Wanted, readonly unknown[]>] extends [object, object, never]
    ? { [Name in NamesOf<Declared | Wanted>]: FieldDisagreement<Declared, Wanted, Name, Where> }[NamesOf<
        Declared | Wanted
      >]
    : [Declared, Wanted] extends [Wanted, Declared]
      ? never
      : `${Where} is of another type`;

/** Takes only what `Disagreement` finds where a declaration is exact. */
export type Exactly<Found extends never> = [Found] extends [never] ? true : false;

type FieldDisagreement<Declared, Wanted, Name extends string, Where extends string> = Name extends keyof Declared
  ? Name extends keyof Wanted
    ? IsOptional<Declared, Name> extends IsOptional<Wanted, Name>
      ? Disagreement<Exclude<Declared[Name], undefined>, Exclude<Wanted[Name], undefined>, `${Where}.${Name}`>
      : `${Where}.${Name} is optional on one side only`
    : `${Where}.${Name} is declared, but no part of the view`
  : `${Where}.${Name} is not declared`;

/** Of all fields of all types of a union. */
type NamesOf<Type> = Type extends unknown ? keyof Type & string : never;

type IsOptional<Owner, Name extends keyof Owner> = object extends Pick<Owner, Name> ? true : false;
