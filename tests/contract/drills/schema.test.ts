import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { DRILLS, parseDrill } from '../../../levels/index.ts';
import { STATE_QUANTITIES } from '../../../engine/drill/index.ts';
import schema from '../../../levels/schemas/drill.schema.json' with { type: 'json' };
import { drillJson, EVERY_PART } from '../../support/drillFile.ts';
import { numbersIn, pathsIn, spoiled } from '../../support/landerFile.ts';

/**
 * The published schema and the parser are two readings of one format: what is wrong in shape is wrong for both. The parser
 * goes beyond the schema only in the checks between fields, all of which have codes of their own.
 */
const accepts = new Ajv2020({ strict: true, allErrors: true }).compile(schema);

/** Codes of the checks that a schema cannot make. */
const BEYOND = [
  'drill/name-twice',
  'drill/names-nothing',
  'drill/contingency',
  'drill/too-high',
  'drill/cycle',
  'drill/no-such-leg',
  'drill/not-flyable',
  'drill/profile',
];

/** Whether the parser finds the shape in order: no problem, or only those beyond the schema. */
function shapeParses(document: unknown): boolean {
  const result = parseDrill(document);
  return result.ok || result.error.every(({ code }) => BEYOND.includes(code));
}

const places = pathsIn(EVERY_PART)
  .filter((path) => path.length > 0)
  .map((path) => [path.join('.'), path] as const);

describe('drill.schema.json', () => {
  it.each(DRILLS.map(({ id }) => id))('[DR2] accepts %s, which the parser took', (id) => {
    const drill = DRILLS.find((each) => each.id === id);
    expect(accepts(JSON.parse(JSON.stringify(drill))), JSON.stringify(accepts.errors)).toBe(true);
  });

  it('[DR2] accepts a drill with every kind of trigger, effect and sign, as the parser does', () => {
    expect(accepts(EVERY_PART), JSON.stringify(accepts.errors)).toBe(true);
    expect(parseDrill(EVERY_PART)).toEqual({ ok: true, value: EVERY_PART });
  });

  it.each(places)('[DR2] refuses what the parser refuses at %s', (_, path) => {
    for (const value of [null, 'text', true, {}, [], -1, 'x'.repeat(900), 'two\nlines', undefined]) {
      if (value === undefined && /^\d+$/.test(String(path.at(-1)))) continue;
      const broken = spoiled(EVERY_PART, path, value);
      expect(accepts(broken), `schema, ${JSON.stringify(value)}`).toBe(shapeParses(broken));
    }
    expect(shapeParses(spoiled(EVERY_PART, path, null))).toBe(false);
  });

  it('[DR2] has the ranges of the parser for every number', () => {
    let refused = 0;
    for (const [path, value] of numbersIn(EVERY_PART)) {
      for (const other of [-1e9, -1001, -101, -51, -0.5, 0, 0.05, 0.5, 1.5, 4.5, 9, 33, 101, 601, 1e6, 2 ** 53]) {
        const changed = spoiled(EVERY_PART, path, other === value ? other + 1 : other);
        const parses = shapeParses(changed);
        if (!parses) refused++;
        expect(accepts(changed), `${path.join('.')} ${other}`).toBe(parses);
      }
    }
    expect(refused).toBeGreaterThan(100);
  });

  it('[DR2] says the caution, and knows each quantity that a trigger can wait for', () => {
    expect(schema.description).toContain(CAUTION.split('. ')[1]);
    for (const quantity of STATE_QUANTITIES) {
      const trigger = { on: 'state', quantity, above: 1 };
      expect(accepts(spoiled(drillJson(), ['events', 0, 'trigger'], trigger)), quantity).toBe(true);
    }
  });
});
