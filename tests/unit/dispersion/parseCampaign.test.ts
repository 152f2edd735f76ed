import { describe, expect, it } from 'vitest';
import {
  CAMPAIGN_BUDGET,
  CAMPAIGN_FORMAT,
  parseCampaign,
  type ReadLander,
} from '../../../engine/dispersion/parseCampaign.ts';
import { parseDocumentText } from '../../../engine/documentText.ts';
import { createProblemList } from '../../../engine/fieldReader.ts';
import { LANDER_BUDGET } from '../../../engine/lander/landerRanges.ts';
import { accept, refuse, type FieldProblem } from '../../../engine/result.ts';
import { findWorld } from '../../../engine/worlds.ts';
import { plainLander } from '../../support/plainLander.ts';

const readLander: ReadLander = (value) =>
  value === 'plain'
    ? accept(plainLander())
    : refuse([{ code: 'lander/unknown', path: 'mass', expected: 'a known lander', came: String(value) }]);

function document(changes: Record<string, unknown> = {}): Record<string, unknown> {
  return {
    format: CAMPAIGN_FORMAT,
    title: 'Bench arrivals',
    lander: 'plain',
    world: 'moon',
    method: 'sobol',
    runs: 4096,
    seed: 5,
    inputs: {
      descentRate: { kind: 'truncated normal', mean: 1.5, deviation: 0.3, low: 0.2, high: 3 },
      horizontalSpeed: { kind: 'rayleigh', scale: 0.5 },
      slopeDeg: { kind: 'rayleigh', scale: 3, high: 15 },
      friction: { kind: 'uniform', low: 0.4, high: 1 },
      yawDeg: { kind: 'uniform', low: 0, high: 360 },
      pitchDeg: { kind: 'normal', mean: 0, deviation: 1 },
      crushForceFactor: 1,
      padHeight: {
        kind: 'discrete',
        choices: [
          { value: 0, weight: 9 },
          { value: 0.3, weight: 1 },
        ],
      },
    },
    gear: [
      { value: [], weight: 97 },
      { value: [{ leg: 2, kind: 'soft', factor: 0.5 }], weight: 3 },
    ],
    requirement: { fraction: 0.99, confidence: 0.95 },
    ...changes,
  };
}

function inputs(changes: Record<string, unknown>): Record<string, unknown> {
  return document({ inputs: { ...(document().inputs as Record<string, unknown>), ...changes } });
}

function problemsOf(json: unknown): readonly FieldProblem[] {
  const read = parseCampaign(json, readLander);
  return read.ok ? [] : read.error;
}

/** Paths of what is wrong with a campaign of one leg condition. */
function gearOf(condition: Record<string, unknown>): readonly string[] {
  return problemsOf(document({ gear: [{ value: [condition], weight: 1 }] })).map(({ path }) => path);
}

describe('a campaign document', () => {
  it('[DI10] holds a whole lander of the deepest nesting that a lander may have, and nothing deeper', () => {
    const fits = [0, 1].map((more) => {
      const depth = LANDER_BUDGET.deepest + more;
      const text = `{"lander":${'['.repeat(depth)}${']'.repeat(depth)}}`;
      return parseDocumentText(createProblemList('campaign'), text, CAMPAIGN_BUDGET).ok;
    });
    expect(fits).toEqual([true, false]);
  });

  it('[DI10] is read whole, legs counted from 1, gravity from the world, success as upright unless it says otherwise', () => {
    const read = parseCampaign(document(), readLander);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    expect(read.value.gravity).toBe(findWorld('moon')?.gravity);
    expect(read.value.requirement).toEqual({ fraction: 0.99, confidence: 0.95, outcomes: ['upright'] });
    expect(read.value.inputs.crushForceFactor).toEqual({ kind: 'constant', value: 1 });
    expect(read.value.inputs.descentRate).toEqual((document().inputs as Record<string, unknown>).descentRate);
    expect(read.value.gear?.[1]?.value).toEqual([{ leg: 1, kind: 'soft', factor: 0.5 }]);
    expect(read.value.pairs).toEqual([]);
  });

  it('[DI10] names what is wrong with a leg condition once, and judges no further what it could not read', () => {
    expect(gearOf({ leg: 'second', kind: 'soft' })).toEqual(['gear[0].value[0].leg']);
    expect(gearOf({ leg: 1, kind: 'bent' })).toEqual(['gear[0].value[0].kind']);
    expect(gearOf({ leg: 1, kind: 'soft', factor: 'half' })).toEqual(['gear[0].value[0].factor']);
  });

  it('[DI10] may say gravity itself, and pair two speeds', () => {
    const { descentRate, friction } = document().inputs as Record<string, unknown>;
    const pairs = [
      { inputs: ['downhillSpeed', 'crossSpeed'], means: [0.1, 0], deviations: [0.3, 0.3], correlation: -0.2 },
    ];
    const json = { ...document({ gravity: 1.3, pairs, inputs: { descentRate, friction } }) };
    delete json.world;
    const read = parseCampaign(json, readLander);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    expect(read.value.gravity).toBe(1.3);
    expect(read.value.pairs).toEqual(pairs);
  });

  it.each<[string, Record<string, unknown>, string, RegExp]>([
    ['an unknown field', document({ color: 1 }), 'color', /one of format|no such field/],
    ['another format', document({ format: 'kilter-campaign/9' }), 'format', /kilter-campaign\/1/],
    ['neither world nor gravity', document({ world: undefined }), 'world', /either world or gravity/],
    ['both world and gravity', document({ gravity: 1.62 }), 'world', /either world or gravity/],
    ['an unknown world', document({ world: 'mooon' }), 'world', /did you mean "moon"/],
    ['a gravity in the wrong unit', document({ world: undefined, gravity: 1622 }), 'gravity', /0.01 to 30/],
    ['no runs', document({ runs: 0 }), 'runs', /whole number from 1/],
    ['too many runs', document({ runs: 1e9 }), 'runs', /2000000/],
    ['half a seed', document({ seed: 0.5 }), 'seed', /whole number/],
    ['a foreign method', document({ method: 'random' }), 'method', /"sobol", "latin", "plain"/],
    ['a bad lander', document({ lander: 'other' }), 'lander.mass', /a known lander/],
    ['a mistyped input', inputs({ frction: 0.7 }), 'inputs.frction', /did you mean friction/],
    ['a negative friction', inputs({ friction: -0.1 }), 'inputs.friction', /0 to 10/],
    [
      'friction that may turn negative',
      inputs({ friction: { kind: 'normal', mean: 0.5, deviation: 0.1 } }),
      'inputs.friction',
      /truncated normal can be bounded/,
    ],
    [
      'a slope without a cut-off in radians by mistake',
      inputs({ slopeDeg: { kind: 'rayleigh', scale: 20 } }),
      'inputs.slopeDeg',
      /draws from 0 to 60/,
    ],
    [
      'bounds in the wrong order',
      inputs({ friction: { kind: 'uniform', low: 1, high: 0.4 } }),
      'inputs.friction',
      /low below high/,
    ],
    [
      'a deviation of nothing',
      inputs({ pitchDeg: { kind: 'normal', mean: 0, deviation: 0 } }),
      'inputs.pitchDeg.deviation',
      /number from/,
    ],
    [
      'a truncated normal with nothing left',
      inputs({ descentRate: { kind: 'truncated normal', mean: 1, deviation: 0.1, low: 5, high: 6 } }),
      'inputs.descentRate',
      /keep at least/,
    ],
    ['NaN', inputs({ friction: Number.NaN }), 'inputs.friction', /0 to 10/],
    ['text for a number', inputs({ friction: '0.7' }), 'inputs.friction', /a number or an object/],
    ['a distribution without a kind', inputs({ friction: { low: 0, high: 1 } }), 'inputs.friction.kind', /a value/],
    ['a foreign kind', inputs({ friction: { kind: 'gaussian' } }), 'inputs.friction.kind', /"normal"/],
    [
      'a field of another kind',
      inputs({ friction: { kind: 'uniform', low: 0, high: 1, mean: 0 } }),
      'inputs.friction.mean',
      /one of|no such/,
    ],
    [
      'a choice without weight',
      inputs({ padHeight: { kind: 'discrete', choices: [{ value: 0 }] } }),
      'inputs.padHeight.choices[0].weight',
      /a value/,
    ],
    [
      'a weight of nothing',
      inputs({ padHeight: { kind: 'discrete', choices: [{ value: 0, weight: 0 }] } }),
      'inputs.padHeight.choices[0].weight',
      /number from/,
    ],
    ['no descent rate', document({ inputs: { friction: 0.7 } }), 'inputs.descentRate', /a distribution/],
    ['two ways to say the speed', inputs({ crossSpeed: 0.1 }), 'inputs', /horizontalSpeed with travelAzimuthDeg, or/],
    ['a strength without soil', inputs({ bearingStrength: 20000 }), 'soil', /kind bearing/],
    [
      'an input twice',
      document({
        pairs: [{ inputs: ['horizontalSpeed', 'yawDeg'], means: [0, 0], deviations: [1, 1], correlation: 0 }],
      }),
      'inputs.horizontalSpeed',
      /one distribution/,
    ],
    [
      'a pair of one',
      document({
        pairs: [{ inputs: ['crossSpeed', 'crossSpeed'], means: [0, 0], deviations: [1, 1], correlation: 0 }],
      }),
      'pairs[0].inputs',
      /two different/,
    ],
    [
      'a correlation above one',
      document({
        pairs: [{ inputs: ['downhillSpeed', 'crossSpeed'], means: [0, 0], deviations: [1, 1], correlation: 1.2 }],
      }),
      'pairs[0].correlation',
      /-1 to 1/,
    ],
    [
      'a mean that only the first of a pair could have',
      document({
        pairs: [{ inputs: ['pitchDeg', 'friction'], means: [-5, -0.5], deviations: [1, 0.1], correlation: 0 }],
      }),
      'pairs[0].means[1]',
      /0 to/,
    ],
    [
      'a mean that only the second of a pair could have',
      document({
        pairs: [{ inputs: ['friction', 'pitchDeg'], means: [-0.5, -5], deviations: [0.1, 1], correlation: 0 }],
      }),
      'pairs[0].means[0]',
      /0 to/,
    ],
    [
      'a requirement that nothing meets',
      document({ requirement: { fraction: 0.9, confidence: 0.9, outcomes: [] } }),
      'requirement.outcomes',
      /1 to \d outcomes/,
    ],
    [
      'a leg that is not there',
      document({ gear: [{ value: [{ leg: 5, kind: 'missing' }], weight: 1 }] }),
      'gear[0].value[0].leg',
      /1 to 4/,
    ],
    [
      'a leg twice',
      document({
        gear: [
          {
            value: [
              { leg: 1, kind: 'missing' },
              { leg: 1, kind: 'missing' },
            ],
            weight: 1,
          },
        ],
      }),
      'gear[0].value',
      /one condition a leg/,
    ],
    [
      'a soft leg without its factor',
      document({ gear: [{ value: [{ leg: 1, kind: 'soft' }], weight: 1 }] }),
      'gear[0].value[0].factor',
      /a value/,
    ],
    [
      'a certainty',
      document({ requirement: { fraction: 0.9, confidence: 1 } }),
      'requirement.confidence',
      /number from/,
    ],
    [
      'percent for a share',
      document({ requirement: { fraction: 99, confidence: 0.95 } }),
      'requirement.fraction',
      /number from/,
    ],
    [
      'an outcome that does not exist',
      document({ requirement: { fraction: 0.9, confidence: 0.9, outcomes: ['fine'] } }),
      'requirement.outcomes[0]',
      /"upright"/,
    ],
    ['a soil of no kind', document({ soil: { stiffness: 1e5 } }), 'soil', /a kind/],
  ])('[DI10] with %s is refused: path and expectation', (_, json, path, expected) => {
    const problems = problemsOf(json);
    const found = problems.find((problem) => problem.path === path);
    expect(found, JSON.stringify(problems)).toBeDefined();
    expect(found?.expected).toMatch(expected);
    expect(found?.code).toMatch(/^campaign\/[a-z-]+$/);
  });

  it.each([[undefined], [null], [[]], ['text'], [7]])('[DI10] that is %s is refused', (json) => {
    expect(problemsOf(json)[0]).toMatchObject({ path: '', expected: 'an object' });
  });

  it('[DI10] reads every kind of soil', () => {
    for (const soil of [
      { kind: 'rigid' },
      { kind: 'bearing', stiffness: 1e5, strength: 2e4 },
      { kind: 'bekker', cohesive: 1400, frictional: 820_000, exponent: 1, stiffness: 1e6 },
    ]) {
      const read = parseCampaign(document({ soil }), readLander);
      expect(read.ok && read.value.soil).toEqual(soil);
    }
  });
});
