import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BETWEEN_CONTACTS, PHASES } from '../../../engine/world/index.ts';
import { group, inline, list, number, optional, text, truth, words } from '../../../server/schema/shapes.ts';
import { tableShape } from '../../../server/schema/tableShape.ts';
import type { ViewOf } from '../../../server/schema/viewOf.ts';
import { drawnView } from '../../support/drawnView.ts';
import { openPaperWire } from '../../support/paperWire.ts';

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

const SHAPES = { table: tableShape, wide: wideShape } as const;

/** What is done between two sendings: some papers are written once or more, and then somebody may join. */
function drawnTurn<View>(view: fc.Arbitrary<View>) {
  return fc.record(
    { writes: fc.array(fc.record({ member: fc.nat({ max: 2 }), view }), { maxLength: 4 }), joins: view },
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

describe.each(['table', 'wide'] as const)('a paper of the %s', (name) => {
  it('carries any views to the bit, whole and change by change, to its own member only', () => {
    type View = ViewOf<(typeof SHAPES)[typeof name]>;
    const view = drawnView(SHAPES[name]) as fc.Arbitrary<View>;
    const counts: Tally = { grew: 0, shrank: 0, came: 0, went: 0 };
    let lateJoins = 0;
    fc.assert(
      fc.property(view, fc.array(drawnTurn(view), { minLength: 1, maxLength: 8 }), (first, turns) => {
        const wire = openPaperWire(SHAPES[name]);
        wire.join(first);
        const shown = [first];
        for (const { writes, joins } of turns) {
          for (const write of writes) {
            if (write.member >= shown.length) continue;
            wire.write(write.member, write.view);
            tally(counts, shown[write.member], write.view);
            shown[write.member] = write.view;
          }
          if (joins !== undefined) {
            wire.join(joins);
            shown.push(joins);
            lateJoins += 1;
          }
          wire.send();
          expect(shown.map((_, member) => wire.read(member))).toEqual(shown);
          expect(shown.map((_, member) => wire.known(member))).toEqual(shown.map((_, member) => [`m${member}`]));
        }
      }),
      { numRuns: 60, seed: 20_260 },
    );
    // the hard cases did occur
    expect(Math.min(...Object.values(counts))).toBeGreaterThan(100);
    expect(lateJoins).toBeGreaterThan(50);
  });

  it('sends nothing for what stays as it was', () => {
    type View = ViewOf<(typeof SHAPES)[typeof name]>;
    const view = drawnView(SHAPES[name]) as fc.Arbitrary<View>;
    fc.assert(
      fc.property(view, view, (first, next) => {
        const wire = openPaperWire(SHAPES[name]);
        wire.join(first);
        wire.send();
        wire.write(0, next);
        wire.send();
        wire.write(0, structuredClone(next));
        expect(wire.send()).toEqual([0]);
      }),
      { numRuns: 40, seed: 20_261 },
    );
  });
});

describe('a list', () => {
  it('comes once to a member who joined after it grew, where it changes before the next sending', () => {
    const wire = openPaperWire(group({ names: list(text) }));
    wire.join({ names: ['Ada'] });
    wire.write(0, { names: ['Bo'] });
    wire.send();
    expect(wire.read(0)).toEqual({ names: ['Bo'] });
  });
});
