import { Ajv2020 } from 'ajv/dist/2020.js';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../engine/result.ts';
import { DRILLS, parseDrill, parseDrillText } from '../../../levels/index.ts';
import schema from '../../../levels/schemas/drill.schema.json' with { type: 'json' };
import { changedDocument } from '../../support/changedDocument.ts';
import { EVERY_PART } from '../../support/drillFile.ts';

const accepts = new Ajv2020({ strict: true }).compile(schema);
const PARAMETERS = { seed: 26_1130, numRuns: 1500 };

const SOURCES: readonly unknown[] = [EVERY_PART, ...DRILLS];

const changed = changedDocument(SOURCES);

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
