import { Ajv2020 } from 'ajv/dist/2020.js';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../engine/result.ts';
import { DRILLS, parseDrill, parseDrillText } from '../../../levels/index.ts';
import schema from '../../../levels/schemas/drill.schema.json' with { type: 'json' };
import { EVERY_PART } from '../../support/drillFile.ts';
import { spoiled, type Step } from '../../support/landerFile.ts';

const accepts = new Ajv2020({ strict: true }).compile(schema);
const PARAMETERS = { seed: 26_1130, numRuns: 1500 };

function pathsIn(value: unknown, path: readonly Step[] = []): readonly (readonly Step[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([name, inner]) => pathsIn(inner, [...path, name]))];
}

function at(document: unknown, path: readonly Step[]): unknown {
  return path.reduce<unknown>((inner, step) => (inner as Record<Step, unknown> | undefined)?.[step], document);
}

const SOURCES: readonly unknown[] = [EVERY_PART, ...DRILLS];

/** A drill with up to three places changed: for another part of a drill, or for anything. */
const changed = fc
  .record({
    drill: fc.constantFrom(...SOURCES),
    cuts: fc.array(fc.record({ where: fc.nat(), from: fc.nat(), value: fc.jsonValue(), own: fc.boolean() }), {
      maxLength: 3,
    }),
  })
  .map(({ drill, cuts }) =>
    cuts.reduce<unknown>((document, { where, from, value, own }) => {
      const paths = pathsIn(document);
      const path = paths[where % paths.length] ?? [];
      if (path.length === 0) return document;
      return spoiled(document, path, own ? at(document, paths[from % paths.length] ?? []) : value);
    }, structuredClone(drill)),
  );

describe('the reading of drills', () => {
  it('[DR2] never takes what the published schema refuses, and gives back what it takes as it was', () => {
    let taken = 0;
    fc.assert(
      fc.property(changed, (document) => {
        const parsed = parseDrill(document);
        if (!parsed.ok) return;
        taken++;
        expect(accepts(document), JSON.stringify(accepts.errors)).toBe(true);
        expect(parsed.value).toEqual(document);
      }),
      PARAMETERS,
    );
    expect(taken).toBeGreaterThan(PARAMETERS.numRuns / 20);
  });

  it('[DR1] says of each problem where it is, with a line of the text, what was expected and what came', () => {
    let refused = 0;
    fc.assert(
      fc.property(changed, fc.constantFrom(undefined, 2), (document, indent) => {
        const text = JSON.stringify(document, undefined, indent);
        const parsed = parseDrillText(text);
        if (parsed.ok) return;
        refused++;
        const lines = text.split('\n').length;
        for (const problem of parsed.error) {
          expect(problem.expected).not.toBe('');
          expect(formatProblem(problem)).not.toContain('\n');
          expect(problem.line ?? 1).toBeLessThanOrEqual(lines);
        }
      }),
      PARAMETERS,
    );
    expect(refused).toBeGreaterThan(PARAMETERS.numRuns / 20);
  });

  it('[DR1] refuses any JSON and any text without throwing', () => {
    fc.assert(
      fc.property(fc.oneof(fc.json(), fc.string()), (text) => {
        expect(parseDrillText(text).ok).toBe(false);
      }),
      PARAMETERS,
    );
  });
});
