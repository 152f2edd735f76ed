import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import {
  CAMPAIGN_FORMAT,
  CAMPAIGN_INPUTS,
  CAMPAIGN_RANGES,
  INPUT_FACTS,
  parseCampaign,
  SAMPLING_METHODS,
} from '../../../engine/dispersion/index.ts';
import { COUNTS, parseLander } from '../../../engine/lander/index.ts';
import { accept, type FieldProblem } from '../../../engine/result.ts';
import { TOUCHDOWN_OUTCOMES } from '../../../engine/touchdown/index.ts';
import { WORLDS } from '../../../engine/worlds.ts';
import { findLander } from '../../../levels/index.ts';
import benchArrivals from '../../../levels/scenarios/benchArrivals.json' with { type: 'json' };
import schema from '../../../levels/schemas/campaign.schema.json' with { type: 'json' };
import landerSchema from '../../../levels/schemas/lander.schema.json' with { type: 'json' };
import { LANDER_FILES, numbersIn, spoiled, type Step } from '../../support/landerFile.ts';

/**
 * The published schema and the parser are two readings of one format: what is wrong in shape is wrong for both. The parser goes beyond
 * the schema only in what one field cannot show: draws that leave a range, inputs that exclude each other, legs of that lander.
 */
const accepts = new Ajv2020({ strict: true, allErrors: true, schemas: [landerSchema] }).compile(schema);

/** Codes of the checks that a schema cannot make. */
const BEYOND = [
  'campaign/draws-out-of-range',
  'campaign/given-twice',
  'campaign/input-needed',
  'campaign/not-in-order',
  'campaign/nothing-left',
  'campaign/same-input',
  'campaign/soil-needed',
  'campaign/too-many-inputs',
  'campaign/two-speeds',
];

/** Legs are counted against the lander; the schema knows only how many any lander may have. */
const MOST_LEGS = COUNTS.legs.most;

/** What is right there depends on another field: on the inputs that are paired, on the legs of the lander. */
function isElsewhere({ code, path, came }: FieldProblem): boolean {
  if (code !== 'campaign/out-of-range') return false;
  const value = Number(came);
  if (/\.leg$|^padLeg$/.test(path)) return Number.isInteger(value) && value >= 1 && value <= MOST_LEGS;
  return /^pairs\[\d+\]\.means/.test(path) || (/^pairs\[\d+\]\.deviations/.test(path) && value > 0);
}

function problemsOf(document: unknown): readonly FieldProblem[] {
  const read = parseCampaign(document, (value) => {
    // which words name a lander is for the reader of the words
    const lander = findLander(value === 'steeple' ? 'steeple' : 'trivet');
    return typeof value === 'string' && value !== '' && lander !== undefined ? accept(lander) : parseLander(value);
  });
  return read.ok ? [] : read.error;
}

/** Whether the parser finds the shape in order: no problem, or only those beyond the schema. */
function shapeParses(document: unknown): boolean {
  return problemsOf(document).every((problem) => BEYOND.includes(problem.code) || isElsewhere(problem));
}

/** Every kind of thing that a campaign may hold, which one that can be run never does at once. */
const everything = {
  format: CAMPAIGN_FORMAT,
  title: 'Everything',
  lander: 'steeple',
  gravity: 1.3,
  method: 'latin',
  runs: 100,
  seed: 0,
  soil: { kind: 'bekker', cohesive: 1400, frictional: 820_000, exponent: 1, stiffness: 1e6 },
  inputs: {
    horizontalSpeed: { kind: 'rayleigh', scale: 0.4 },
    travelAzimuthDeg: { kind: 'constant', value: 20 },
    descentRate: { kind: 'truncated normal', mean: 1.8, deviation: 0.4, low: 0.3, high: 3 },
    slopeDeg: { kind: 'rayleigh', scale: 4, high: 12 },
    friction: 0.8,
    yawDeg: { kind: 'uniform', low: 0, high: 360 },
    pitchDeg: { kind: 'normal', mean: 0.5, deviation: 1 },
    rollRateDegPerS: { kind: 'discrete', choices: [{ value: 2, weight: 1 }] },
    crushForceFactor: { kind: 'uniform', low: 0.8, high: 1.2 },
  },
  pairs: [{ inputs: ['pitchRateDegPerS', 'yawRateDegPerS'], means: [0.1, 0.2], deviations: [1, 2], correlation: 0.5 }],
  gear: [
    { value: [], weight: 3 },
    {
      value: [
        { leg: 1, kind: 'soft', factor: 0.5 },
        { leg: 2, kind: 'missing' },
        { leg: 3, kind: 'not latched', factor: 0.1 },
      ],
      weight: 1,
    },
  ],
  requirement: { fraction: 0.99, confidence: 0.95, outcomes: ['upright', 'overloaded'] },
};
const standing = { ...everything, soil: { kind: 'rigid' } };
const DOCUMENTS: readonly (readonly [name: string, document: unknown])[] = [
  ['the example', benchArrivals],
  ['everything', everything],
  ['rigid ground', standing],
];

function fieldsIn(value: unknown, path: readonly Step[] = []): readonly (readonly Step[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([name, inner]) => fieldsIn(inner, [...path, name]))];
}

const places = DOCUMENTS.flatMap(([name, document]) =>
  fieldsIn(document)
    .filter((path) => path.length > 0)
    .map((path) => [`${name} ${path.join('.')}`, document, path] as const),
);

describe('campaign.schema.json', () => {
  it.each(DOCUMENTS)('[DI13] accepts %s, as the parser does', (_, document) => {
    expect(accepts(document), JSON.stringify(accepts.errors)).toBe(true);
    expect(problemsOf(document)).toEqual([]);
  });

  it.each(places)('[DI13] refuses what the parser refuses at %s', (_, document, path) => {
    let refused = 0;
    for (const value of [null, 'text', '', true, {}, [], -1, 0.5, undefined, { kind: 'normal' }, { kind: 'uniform' }]) {
      const broken = spoiled(document, path, value);
      const inList = value === undefined && /^\d+$/.test(String(path.at(-1)));
      if (inList) continue;
      const verdict = accepts(broken);
      expect(verdict, `schema, ${JSON.stringify(value)}: ${JSON.stringify(problemsOf(broken))}`).toBe(
        shapeParses(broken),
      );
      if (!verdict) refused++;
    }
    expect(refused).toBeGreaterThan(2);
  });

  it.each(DOCUMENTS)('[DI13] has the ranges of the parser for every number of %s', (_, document) => {
    let [refused, tried] = [0, 0];
    for (const [path, value] of numbersIn(document))
      for (const other of [
        -1e10, -721, -181, -101, -81, -11, -0.001, 0, 1e-13, 0.005, 0.15, 0.5, 1.5, 3.5, 7, 11, 17,
      ].concat([61, 81, 101, 181, 361, 721, 1441, 2e6, 3e6, 1e10, 1e13, value + 0.5])) {
        const broken = spoiled(document, path, other);
        const verdict = accepts(broken);
        tried++;
        if (!verdict) refused++;
        expect(verdict, `${path.join('.')} = ${other}: ${JSON.stringify(problemsOf(broken))}`).toBe(
          shapeParses(broken),
        );
      }
    expect(refused).toBeGreaterThan(300);
    expect(tried - refused).toBeGreaterThan(100);
  });

  it.each<readonly [string, readonly Step[], unknown]>([
    ['an unknown field', ['color'], 'red'],
    ['an unknown input', ['inputs', 'wind'], 1],
    ['a field of another distribution', ['inputs', 'yawDeg', 'mean'], 1],
    ['an unknown distribution', ['inputs', 'yawDeg', 'kind'], 'gaussian'],
    ['no choices', ['inputs', 'rollRateDegPerS', 'choices'], []],
    [
      'too many choices',
      ['inputs', 'rollRateDegPerS', 'choices'],
      Array.from({ length: 65 }, () => ({ value: 1, weight: 1 })),
    ],
    ['a scale of nothing', ['inputs', 'horizontalSpeed', 'scale'], 0],
    ['a cut-off of nothing', ['inputs', 'slopeDeg', 'high'], 0],
    ['a world and a gravity', ['world'], 'moon'],
    ['neither', ['gravity'], undefined],
    ['a pair of three', ['pairs', 0, 'inputs'], ['pitchDeg', 'rollDeg', 'yawDeg']],
    ['nine pairs', ['pairs'], Array.from({ length: 9 }, () => everything.pairs[0])],
    ['a deviation of nothing in a pair', ['pairs', 0, 'deviations', 0], 0],
    ['a missing leg with a factor', ['gear', 1, 'value', 1, 'factor'], 0.5],
    ['a soft leg without one', ['gear', 1, 'value', 0, 'factor'], undefined],
    ['a leg that is fine', ['gear', 1, 'value', 0, 'kind'], 'fine'],
    ['a soil of clay', ['soil', 'kind'], 'clay'],
    ['a strength beside Bekker', ['soil', 'strength'], 1e4],
    ['a title of two lines', ['title'], 'a\nb'],
    ['a title of 121 characters', ['title'], '🪨'.repeat(121)],
    ['no outcome', ['requirement', 'outcomes'], []],
    ['an outcome of another world', ['requirement', 'outcomes', 0], 'fine'],
    ['a certainty', ['requirement', 'confidence'], 1],
    ['another format', ['format'], 'kilter-campaign/2'],
    ['a lander by number', ['lander'], 3],
    ['a broken lander inside', ['lander'], spoiled(LANDER_FILES.trivet, ['parts', 0, 'mass'], -1)],
  ])('[DI13] refuses %s, as the parser does', (_, path, value) => {
    const broken = spoiled(everything, path, value);
    expect(accepts(broken)).toBe(false);
    expect(shapeParses(broken)).toBe(false);
  });

  it.each<readonly [string, readonly Step[], unknown]>([
    ['a whole lander inside', ['lander'], LANDER_FILES.steeple],
    ['a title of 120 characters beyond the basic plane', ['title'], '🪨'.repeat(120)],
    ['a world in place of a gravity', ['gravity'], undefined],
    ['no pairs', ['pairs'], []],
    ['a leg that is not latched, without a factor', ['gear', 1, 'value', 2, 'factor'], undefined],
    ['no requirement', ['requirement'], undefined],
    ['success as upright, unsaid', ['requirement', 'outcomes'], undefined],
    ['a count written as 100.0', ['runs'], 100.0],
  ])('[DI13] accepts %s, as the parser does', (name, path, value) => {
    const changed = spoiled(name.startsWith('a world') ? { ...everything, world: 'mars' } : everything, path, value);
    expect(accepts(changed), JSON.stringify(accepts.errors)).toBe(true);
    expect(problemsOf(changed)).toEqual([]);
  });

  it('[DI13] has every input with its words, its range, its unit and what is taken where it is left out', () => {
    const { inputs } = schema.properties;
    expect(Object.keys(inputs.properties)).toEqual([...CAMPAIGN_INPUTS]);
    for (const input of CAMPAIGN_INPUTS) {
      const { description, $ref } = inputs.properties[input];
      const { low, high, unit, meaning, fallback } = INPUT_FACTS[input];
      const otherwise = fallback === undefined ? '' : `; ${fallback} where it is left out`;
      expect(description).toBe(`${meaning[0]?.toUpperCase()}${meaning.slice(1)}${otherwise} [${unit}]`);
      const named = $ref.replace('#/$defs/', '') as 'speed';
      expect(schema.$defs[named].description).toBe(
        `A number, or a distribution of numbers, from ${low} to ${high} [${unit}]`,
      );
      expect(schema.$defs[named].anyOf[0]).toEqual({ type: 'number', minimum: low, maximum: high });
    }
  });

  it('[DI13] lists the words of the parser and repeats its ranges', () => {
    const { properties } = schema;
    expect(properties.world.enum).toEqual(WORLDS.map(({ id }) => id));
    expect(properties.method.enum).toEqual([...SAMPLING_METHODS]);
    expect(properties.requirement.properties.outcomes.items.enum).toEqual([...TOUCHDOWN_OUTCOMES]);
    expect(properties.format.const).toBe(CAMPAIGN_FORMAT);
    for (const name of ['runs', 'seed', 'gravity'] as const) {
      const { least, most } = CAMPAIGN_RANGES[name];
      expect(properties[name]).toMatchObject({ minimum: least, maximum: most });
    }
    expect(schema.description).toContain(CAUTION);
  });
});
