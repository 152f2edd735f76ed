import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { BOUNDS, COUNTS, parseLander, RANGES, TEXTS } from '../../../engine/lander/index.ts';
import schema from '../../../levels/schemas/lander.schema.json' with { type: 'json' };
import { LANDER_FILES, numbersIn, spoiled, type Step } from '../../support/landerFile.ts';

/**
 * The published schema and the parser are two readings of one format: what is wrong in shape is wrong for both. The parser
 * goes beyond the schema only in the checks between fields, all of which have codes of their own.
 */
const accepts = new Ajv2020({ strict: true, allErrors: true }).compile(schema);

/** Codes of the checks that a schema cannot make. */
const BEYOND = [
  'lander/center-outside-footprint',
  'lander/duplicate-footpad',
  'lander/duplicate-name',
  'lander/falling-stages',
  'lander/flat-hull',
  'lander/footpads-in-line',
  'lander/impossible-moments',
  'lander/no-moment',
  'lander/outside-hull',
  'lander/too-heavy',
  ...Object.keys(BOUNDS).map(
    (name) => `lander/implausible-${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`,
  ),
];

/** Whether the parser finds the shape in order: no problem, or only those beyond the schema. */
function shapeParses(document: unknown): boolean {
  const result = parseLander(document);
  return result.ok || result.error.every(({ code }) => BEYOND.includes(code));
}

const { trivet, bolster } = LANDER_FILES;

function fieldsIn(value: unknown, path: readonly Step[] = []): readonly (readonly Step[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([name, inner]) => fieldsIn(inner, [...path, name]))];
}

/** One of each kind of place in the two example files: list entries beyond the first look alike. */
const places = Object.entries({ trivet, bolster }).flatMap(([name, document]) =>
  fieldsIn(document)
    .filter((path) => path.length > 0 && !path.some((step) => typeof step === 'string' && /^[1-9]\d*$/.test(step)))
    .map((path) => [`${name} ${path.join('.')}`, document, path] as const),
);

describe('lander.schema.json', () => {
  it.each(Object.entries(LANDER_FILES))('[LA14] accepts %s, as the parser does', (_, document) => {
    expect(accepts(document)).toBe(true);
    expect(parseLander(document).ok).toBe(true);
  });

  it.each(places)('[LA14] refuses what the parser refuses at %s', (_, document, path) => {
    for (const value of [null, 'text', true, {}, [], -1, undefined]) {
      const broken = spoiled(document, path, value);
      const inList = value === undefined && /^\d+$/.test(String(path.at(-1)));
      if (inList) continue;
      expect(accepts(broken), `schema, ${JSON.stringify(value)}`).toBe(shapeParses(broken));
    }
    expect(shapeParses(spoiled(document, path, null))).toBe(false);
  });

  it.each(Object.entries(LANDER_FILES))('[LA14] has the ranges of the parser for every number of %s', (_, document) => {
    let refused = 0;
    for (const [path, value] of numbersIn(document)) {
      for (const other of [
        -1e9,
        -361,
        -61,
        -0.001,
        0,
        1e-4,
        0.03,
        0.5,
        1.5,
        17,
        61,
        121,
        601,
        2501,
        1e6,
        1e10,
        value + 0.5,
      ]) {
        const broken = spoiled(document, path, other);
        const verdict = accepts(broken);
        if (!verdict) refused++;
        expect(verdict, `${path.join('.')} = ${other}`).toBe(shapeParses(broken));
      }
    }
    expect(refused).toBeGreaterThan(500);
  });

  it.each<readonly [string, readonly Step[], unknown]>([
    ['an unknown field', ['color'], 'red'],
    ['an unknown field of a part', ['parts', 0, 'color'], 'red'],
    ['an unknown field of a shape', ['parts', 0, 'shape', 'size'], [1, 1, 1]],
    ['an unknown shape', ['parts', 0, 'shape', 'kind'], 'sphere'],
    ['an unknown axis', ['parts', 0, 'shape', 'axis'], 'x'],
    ['legs placed both ways', ['legs', 'footpads'], [[1, 1]]],
    ['too many parts', ['parts'], Array.from({ length: 65 }, () => (trivet as { parts: unknown[] }).parts[0])],
    ['too few hull points', ['hull'], [[0, 0, 1]]],
    ['a point of four numbers', ['hull', 0], [0, 0, 1, 2]],
    ['a point of two numbers', ['hull', 0], [0, 0]],
    ['an id in capitals', ['id'], 'Trivet'],
    ['a name of 61 characters', ['name'], '🪨'.repeat(61)],
    ['a name with a line break', ['name'], 'Tri\nvet'],
    ['a name that begins with a space', ['name'], ' Trivet'],
    ['a summary of nothing', ['summary'], ''],
    ['another format', ['format'], 'kilter-lander/2'],
  ])('[LA14] refuses %s, as the parser does', (_, path, value) => {
    const broken = spoiled(trivet, path, value);
    expect(accepts(broken)).toBe(false);
    expect(shapeParses(broken)).toBe(false);
  });

  it.each<readonly [string, readonly Step[], unknown]>([
    ['a name of 60 characters beyond the basic plane', ['name'], '🪨'.repeat(60)],
    ['no tanks', ['tanks'], []],
    ['no lateral strut', ['legs', 'secondary'], undefined],
    ['a count written as 4.0', ['legs', 'count'], 4.0],
    ['no probe', ['probeLength'], 0],
  ])('[LA14] accepts %s, as the parser does', (_, path, value) => {
    const changed = spoiled(trivet, path, value);
    expect(accepts(changed)).toBe(true);
    expect(shapeParses(changed)).toBe(true);
  });

  it('[LA14] describes every field and names the unit of every number', () => {
    const silent: string[] = [];
    const visit = (node: unknown, path: string) => {
      if (typeof node !== 'object' || node === null) return;
      const { properties } = node as { properties?: Record<string, Record<string, unknown>> };
      for (const [name, field] of Object.entries(properties ?? {})) {
        const { description, type } = field;
        const numeric = type === 'number' || type === 'integer';
        if (numeric && !/\[.+\]$/.test(String(description))) silent.push(`${path}.${name}`);
        if (description === undefined && !('$ref' in field) && !('const' in field)) silent.push(`${path}.${name}`);
      }
      for (const [name, inner] of Object.entries(node)) visit(inner, `${path}.${name}`);
    };
    visit(schema, '');
    expect(silent).toEqual([]);
    expect(schema.description).toContain(CAUTION);
  });

  it('[LA14] repeats the budgets of the parser', () => {
    const { properties, $defs } = schema;
    const lists = { parts: properties.parts, tanks: properties.tanks, hull: properties.hull };
    for (const name of ['parts', 'tanks', 'hull'] as const)
      expect([lists[name].minItems, lists[name].maxItems]).toEqual([COUNTS[name].least, COUNTS[name].most]);
    const { footpads, stages } = $defs.listedLegs.properties;
    expect([footpads.minItems, footpads.maxItems]).toEqual([COUNTS.legs.least, COUNTS.legs.most]);
    expect([stages.minItems, stages.maxItems]).toEqual([COUNTS.stages.least, COUNTS.stages.most]);
    for (const name of ['id', 'name', 'summary'] as const) {
      expect([properties[name].minLength, properties[name].maxLength]).toEqual([TEXTS[name].least, TEXTS[name].most]);
      expect(properties[name].pattern).toBe(TEXTS[name].pattern.source);
    }
    expect($defs.part.properties.mass).toMatchObject({ minimum: RANGES.mass.least, maximum: RANGES.mass.most });
  });
});
