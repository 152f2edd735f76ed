import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BETWEEN_CONTACTS, PHASES } from '../../../engine/world/index.ts';
import { commonShape } from '../../../server/schema/commonShape.ts';
import { group, inline, list, number, optional, text, truth, words } from '../../../server/schema/shapes.ts';
import { ownShape } from '../../../server/schema/ownShape.ts';
import { drawnView } from '../../support/drawnView.ts';
import { openPaperWire, type PaperWire } from '../../support/paperWire.ts';

/** Every width and kind, in every place that the language allows; the table needs only some of them. */
const wideShape = group({
  int8: number('int8'),
  int16: number('int16'),
  uint16: number('uint16'),
  int32: number('int32'),
  uint32: optional(number('uint32')),
  float32: number('float32'),
  float64: optional(number('float64')),
  name: optional(text),
  lit: optional(truth),
  phase: optional(words(PHASES)),
  numbers: list(number('float32')),
  truths: list(truth),
  names: optional(list(text)),
  phases: list(words(PHASES)),
  inlined: inline({ a: truth, deeper: inline({ a: text }), maybe: optional(inline({ a: number('uint8') })) }),
  nest: group({
    inner: optional(group({ a: number('uint8'), list: list(group({ after: words(BETWEEN_CONTACTS) })) })),
  }),
  items: list(
    group({
      id: text,
      inlined: inline({ a: truth, b: optional(text) }),
      one: group({ a: number('float64') }),
      maybe: optional(group({ a: number('int16') })),
      many: list(group({ a: optional(number('uint8')), more: list(number('int8')) })),
      maybeMany: optional(list(group({ a: text }))),
    }),
  ),
});

const SHAPES = { table: { common: commonShape, own: ownShape }, wide: { common: wideShape, own: wideShape } } as const;

/** What is done between two sendings: some papers are written once or more, the common one may be, and then somebody may join. */
function drawnTurn<Common, Own>(common: fc.Arbitrary<Common>, own: fc.Arbitrary<Own>) {
  return fc.record(
    { common, writes: fc.array(fc.record({ member: fc.nat({ max: 2 }), view: own }), { maxLength: 4 }), joins: own },
    { requiredKeys: ['writes'] },
  );
}

/** How often something of a kind happened between two views of one member. */
interface Tally {
  grew: number;
  shrank: number;
  came: number;
  went: number;
}

function tally(counts: Tally, before: unknown, after: unknown): void {
  if (Array.isArray(before) && Array.isArray(after)) {
    if (after.length > before.length) counts.grew += 1;
    if (after.length < before.length) counts.shrank += 1;
  }
  if (!isObject(before) || !isObject(after)) return;
  for (const name of new Set([...Object.keys(before), ...Object.keys(after)])) {
    const [was, is] = [before[name], after[name]];
    if (was === undefined && isObject(is) && !Array.isArray(before)) counts.came += 1;
    if (isObject(was) && is === undefined && !Array.isArray(before)) counts.went += 1;
    tally(counts, was, is);
  }
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}

/** Any views of the papers of this name; each of their kinds by itself goes through the same code, which the compiler need not tell apart. */
function drawnViews(name: keyof typeof SHAPES) {
  const { common, own } = SHAPES[name];
  return {
    common: drawnView(common) as fc.Arbitrary<never>,
    own: drawnView(own) as fc.Arbitrary<never>,
    open: () => openPaperWire(common, own) as PaperWire<unknown, unknown>,
  };
}

describe.each(['table', 'wide'] as const)('papers of the %s', (name) => {
  it('carry any views to the bit, whole and change by change, the common one to all and each other to its own member only', () => {
    const { common, own, open } = drawnViews(name);
    const counts: Tally = { grew: 0, shrank: 0, came: 0, went: 0 };
    let lateJoins = 0;
    fc.assert(
      fc.property(
        common,
        own,
        fc.array(drawnTurn(common, own), { minLength: 1, maxLength: 8 }),
        (middle, first, turns) => {
          const wire = open();
          wire.writeCommon(middle);
          wire.join(first);
          const shown: unknown[] = [first];
          let shownToAll: unknown = middle;
          for (const turn of turns) {
            if (turn.common !== undefined) {
              wire.writeCommon(turn.common);
              tally(counts, shownToAll, turn.common);
              shownToAll = turn.common;
            }
            for (const write of turn.writes) {
              if (write.member >= shown.length) continue;
              wire.write(write.member, write.view);
              tally(counts, shown[write.member], write.view);
              shown[write.member] = write.view;
            }
            if (turn.joins !== undefined) {
              wire.join(turn.joins);
              shown.push(turn.joins);
              lateJoins += 1;
            }
            wire.send();
            expect(shown.map((_, member) => wire.read(member))).toEqual(shown);
            expect(shown.map((_, member) => wire.readCommon(member))).toEqual(shown.map(() => shownToAll));
            expect(shown.map((_, member) => wire.known(member))).toEqual(shown.map((_, member) => [`m${member}`]));
          }
        },
      ),
      { numRuns: 40, seed: 20_260 },
    );
    // the hard cases did occur
    expect(Math.min(...Object.values(counts))).toBeGreaterThan(100);
    expect(lateJoins).toBeGreaterThan(50);
  });

  it('send nothing for what stays as it was', () => {
    const { common, own, open } = drawnViews(name);
    fc.assert(
      fc.property(common, own, own, (middle, first, next) => {
        const wire = open();
        wire.writeCommon(middle);
        wire.join(first);
        wire.send();
        wire.write(0, next);
        wire.send();
        wire.write(0, structuredClone(next));
        wire.writeCommon(structuredClone(middle));
        expect(wire.send()).toEqual([0]);
      }),
      { numRuns: 40, seed: 20_261 },
    );
  });
});

describe('a list', () => {
  it('comes once to a member who joined after it grew, where it changes before the next sending', () => {
    const names = group({ names: list(text) });
    const wire = openPaperWire(names, names);
    wire.writeCommon({ names: ['Cy'] });
    wire.join({ names: ['Ada'] });
    wire.write(0, { names: ['Bo'] });
    wire.writeCommon({ names: ['Di'] });
    wire.send();
    expect(wire.read(0)).toEqual({ names: ['Bo'] });
    expect(wire.readCommon(0)).toEqual({ names: ['Di'] });
  });
});
