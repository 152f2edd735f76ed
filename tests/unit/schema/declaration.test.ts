import { describe, expect, it } from 'vitest';
import type { CommonView } from '../../../engine/table/index.ts';
import { group, inline, list, number, optional, text, truth, words } from '../../../server/schema/shapes.ts';
import type { commonShape } from '../../../server/schema/commonShape.ts';
import type { Disagreement, Exactly, ViewOf } from '../../../server/schema/viewOf.ts';

/** The compiler is the judge here: each line after `@ts-expect-error` must not compile, and all others must. */

interface Wanted {
  readonly size: number;
  readonly note?: string;
  readonly inner?: { readonly on: boolean; readonly word?: 'yes' | 'no' };
  readonly items: readonly { readonly name: string; readonly weight?: number }[];
}
type Of<Shape> = Disagreement<ViewOf<Shape>, Wanted>;

const size = number('float64');
const note = optional(text);
const word = optional(words(['yes', 'no']));
const inner = optional(group({ on: truth, word }));
const items = list(group({ name: text, weight: optional(size) }));

const exact = group({ size, note, inner, items });
const reordered = group({ items, inner: optional(inline({ word, on: truth })), note, size });
const forgotten = group({ size, inner, items });
const forgottenDeep = group({ size, note, inner: optional(group({ on: truth })), items });
const forgottenItem = group({ size, note, inner, items: list(group({ name: text })) });
const extra = group({ size, note, inner, items, more: optional(truth) });
const wronglyOptional = group({ size: optional(size), note, inner, items });
const wronglyRequired = group({ size, note: text, inner, items });
const otherType = group({ size: text, note, inner, items });
const fewerWords = group({ size, note, inner: optional(group({ on: truth, word: optional(words(['yes'])) })), items });
const moreWords = group({
  size,
  note,
  inner: optional(group({ on: truth, word: optional(words(['yes', 'no', 'maybe'])) })),
  items,
});
const noList = group({ size, note, inner, items: group({ name: text, weight: optional(size) }) });

describe('a declaration', () => {
  it('compiles where it is exactly the type of the view, in whatever order and however grouped on the wire', () => {
    const both: readonly [Exactly<Of<typeof exact>>, Exactly<Of<typeof reordered>>] = [true, true];
    expect(both).toEqual([true, true]);
  });

  it('does not compile where it is anything else', () => {
    const refused = [
      // @ts-expect-error an optional field is forgotten
      true satisfies Exactly<Of<typeof forgotten>>,
      // @ts-expect-error an optional field of a structure is forgotten
      true satisfies Exactly<Of<typeof forgottenDeep>>,
      // @ts-expect-error an optional field of the items of a list is forgotten
      true satisfies Exactly<Of<typeof forgottenItem>>,
      // @ts-expect-error a field too many
      true satisfies Exactly<Of<typeof extra>>,
      // @ts-expect-error optional here alone
      true satisfies Exactly<Of<typeof wronglyOptional>>,
      // @ts-expect-error optional there alone
      true satisfies Exactly<Of<typeof wronglyRequired>>,
      // @ts-expect-error text for a number
      true satisfies Exactly<Of<typeof otherType>>,
      // @ts-expect-error a word too few
      true satisfies Exactly<Of<typeof fewerWords>>,
      // @ts-expect-error a word too many
      true satisfies Exactly<Of<typeof moreWords>>,
      // @ts-expect-error one for many
      true satisfies Exactly<Of<typeof noList>>,
    ];
    expect(refused).toHaveLength(10);
  });

  it('says which field is wrong, and how', () => {
    const found: readonly [
      Of<typeof forgotten>,
      Of<typeof forgottenItem>,
      Of<typeof extra>,
      Of<typeof wronglyOptional>,
      Of<typeof otherType>,
    ] = [
      'view.note is not declared',
      'view.items[].weight is not declared',
      'view.more is declared, but no part of the view',
      'view.size is optional on one side only',
      'view.size is of another type',
    ];
    expect(new Set(found).size).toBe(5);
  });

  it('of the table follows the view of the engine', () => {
    type Table = ViewOf<typeof commonShape>;
    const exactly: Exactly<Disagreement<Table, CommonView>> = true;
    const gained: Disagreement<Table, CommonView & { readonly neverShown?: string }> =
      'view.neverShown is not declared';
    const lost: Disagreement<
      Table,
      Omit<CommonView, 'scorecard'>
    > = 'view.scorecard is declared, but no part of the view';
    expect([exactly, gained, lost]).toHaveLength(3);
    // @ts-expect-error the view has gained an optional field
    type Gained = Exactly<Disagreement<Table, CommonView & { readonly neverShown?: string }>>;
    // @ts-expect-error the view has lost one
    type Lost = Exactly<Disagreement<Table, Omit<CommonView, 'scorecard'>>>;
    const never: readonly [Gained, Lost] = [false, false];
    expect(never).toEqual([false, false]);
  });
});
