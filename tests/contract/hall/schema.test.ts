import { Ajv2020 } from 'ajv/dist/2020.js';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { SHAPE_FACTS, SHAPE_FIELDS } from '../../../engine/study/index.ts';
import { HALL_TEXT, parseHall } from '../../../levels/index.ts';
import schema from '../../../levels/schemas/hall.schema.json' with { type: 'json' };
import { changedDocument } from '../../support/changedDocument.ts';
import { numbersIn, pathsIn, spoiled, valueAt } from '../../support/landerFile.ts';

/**
 * The published schema and the parser are two readings of one format: whatever the parser takes the schema takes. The parser goes beyond it: a changed lander
 * must be one, a leg that is gone must have been there, a step fits between the ends, a descent can be flown.
 */
const accepts = new Ajv2020({ strict: true, allErrors: true }).compile(schema);

const ARRIVAL = { name: 'A', lander: 'trivet', world: 'moon', slopeDeg: 5, descentRate: 1.5, horizontalSpeed: -1.8 };
const SHAPE = { legCount: 5, footRadius: 2.5, crushForce: 9000, stroke: 0.4, mass: 1500, fill: 0.5, centerHeight: 1.6 };
const SAID = { question: 'Which?', answer: 'That.' };
const DIAL = { kind: 'dial', ...SAID, lander: 'trivet', worlds: ['moon'], slopeDeg: 5, descentRate: 1, friction: 0.7 };

/** A file that has every kind of scene and every field once. */
const EVERY_PART: unknown = {
  format: 'kilter-hall/1',
  title: 'Every part',
  scenes: [
    {
      kind: 'film',
      ...SAID,
      vote: true,
      pace: 0.5,
      arrivals: [
        ARRIVAL,
        { ...ARRIVAL, shape: SHAPE, missing: [2] },
        { ...ARRIVAL, lander: 'steeple', lying: true, friction: 0.5, yawDeg: -30 },
      ],
    },
    { ...DIAL, field: 'footRadius', from: 2, to: 3, step: 0.1 },
    { ...DIAL, field: 'legCount', from: 3, to: 6, step: 1 },
    {
      kind: 'flight',
      ...SAID,
      lander: 'trivet',
      site: 'saddlers-bench',
      world: 'moon',
      start: 'low',
      seed: 1,
    },
  ],
};
const SOURCES: readonly unknown[] = [EVERY_PART, JSON.parse(HALL_TEXT)];

const places = pathsIn(EVERY_PART)
  .filter((path) => path.length > 0)
  .map((path) => [path.join('.'), path] as const);

const changed = changedDocument(SOURCES);

describe('hall.schema.json', () => {
  it('accepts the scenes that come with the program, and every kind of scene with every field, as the parser does', () => {
    for (const source of SOURCES) {
      expect(accepts(source), JSON.stringify(accepts.errors)).toBe(true);
      expect(parseHall(source).ok).toBe(true);
    }
  });

  it.each(places)('refuses at %s what is of another kind, as the parser does', (_, path) => {
    for (const value of [null, true, {}, [], -1e9, 'x'.repeat(900), 'two\nlines']) {
      if (JSON.stringify(value) === JSON.stringify(valueAt(EVERY_PART, path))) continue;
      const broken = spoiled(EVERY_PART, path, value);
      // an empty shape changes nothing, and no leg is gone: both are said
      expect(accepts(broken), JSON.stringify(value)).toBe(parseHall(broken).ok);
    }
  });

  it('accepts whatever the parser takes, whatever is changed', () => {
    let taken = 0;
    fc.assert(
      fc.property(changed, (document) => {
        if (!parseHall(document).ok) return;
        taken++;
        expect(accepts(document), JSON.stringify(accepts.errors)).toBe(true);
      }),
      { seed: 26_1201, numRuns: 1500 },
    );
    expect(taken).toBeGreaterThan(75);
  });

  it('refuses no number that the parser takes, and has ranges', () => {
    let refused = 0;
    for (const [path, value] of numbersIn(EVERY_PART)) {
      for (const other of [-1e9, -361, -13, -0.5, 0, 0.005, 0.5, 1.5, 3.5, 11, 13, 46, 51, 361, 1e9, 2 ** 53]) {
        const document = spoiled(EVERY_PART, path, other === value ? other + 1 : other);
        const isTaken = accepts(document);
        if (!isTaken) refused++;
        // what the schema refuses the parser does not take
        expect(isTaken || !parseHall(document).ok, `${path.join('.')} ${other}`).toBe(true);
      }
    }
    expect(refused).toBeGreaterThan(150);
  });

  it('says the caution, and has each field of a shape with its range', () => {
    expect(schema.description).toContain(CAUTION.split('. ')[1]);
    const shape: Readonly<Record<string, { readonly minimum: number; readonly maximum: number }>> =
      schema.$defs.arrival.properties.shape.properties;
    expect(Object.keys(shape)).toEqual(SHAPE_FIELDS);
    for (const field of SHAPE_FIELDS)
      expect([shape[field]?.minimum, shape[field]?.maximum]).toEqual([
        SHAPE_FACTS[field].least,
        SHAPE_FACTS[field].most,
      ]);
  });
});
