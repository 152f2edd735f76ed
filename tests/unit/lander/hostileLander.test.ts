import { describe, expect, it } from 'vitest';
import { parseLander, parseLanderText, BOUNDS, LANDER_BUDGET } from '../../../engine/lander/index.ts';
import { formatProblem } from '../../../engine/result.ts';
import { LANDER_FILES, numbersIn, scaled, spoiled, type Step } from '../../support/landerFile.ts';

const { trivet, steeple, bolster } = LANDER_FILES;
const { mostBytes } = LANDER_BUDGET;

function codesOf(json: unknown): readonly string[] {
  const result = parseLander(json);
  return result.ok ? [] : result.error.map((problem) => problem.code);
}

function codesOfText(text: string): readonly string[] {
  const result = parseLanderText(text);
  return result.ok ? [] : result.error.map((problem) => problem.code);
}

function spoil(path: readonly Step[], value: unknown): readonly string[] {
  return codesOf(spoiled(trivet, path, value));
}

describe('hostile numbers are refused', () => {
  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('[LA7] %d for a mass', (value) => {
    expect(spoil(['parts', 0, 'mass'], value)).toEqual(['lander/not-finite']);
  });

  it.each(numbersIn(trivet).map(([path]) => [path.join('.'), path] as const))('[LA7] NaN at %s', (_, path) => {
    expect(spoil(path, Number.NaN)).toEqual(['lander/not-finite']);
  });

  it.each([
    ['text', '410'],
    ['null', null],
    ['true', true],
    ['a list', []],
    ['an object', {}],
    ['a big integer', 10n],
  ])('[LA7] %s where a number belongs', (_, value) => {
    expect(spoil(['parts', 0, 'mass'], value)).toEqual(['lander/wrong-type']);
  });

  it('[LA7] a negative mass', () => {
    expect(spoil(['parts', 0, 'mass'], -410)).toEqual(['lander/out-of-range']);
  });

  it('[LA7] no mass at all', () => {
    expect(spoil(['parts', 0, 'mass'], 0)).toEqual(['lander/out-of-range']);
  });

  it('[LA7] a fill above 1', () => {
    expect(spoil(['tanks', 0, 'fill'], 1.01)).toEqual(['lander/out-of-range']);
  });

  it('[LA7] the largest and the smallest number there is', () => {
    expect(spoil(['parts', 0, 'mass'], Number.MAX_VALUE)).toEqual(['lander/out-of-range']);
    expect(spoil(['parts', 0, 'mass'], Number.MIN_VALUE)).toEqual(['lander/out-of-range']);
  });
});

describe('landers that cannot stand are refused', () => {
  it('[LA8] one leg', () => {
    expect(spoil(['legs', 'count'], 1)).toEqual(['lander/out-of-range']);
    const lone = spoiled(spoiled(bolster, ['legs', 'footpads'], [[0, 0]]), ['legs', 'hips'], [[0, 0, 1.7]]);
    expect(codesOf(lone)).toEqual(['lander/wrong-count', 'lander/wrong-count']);
  });

  it('[LA8] a center of mass outside the footprint', () => {
    const json = spoiled(trivet, ['parts', 5], {
      name: 'overhang',
      kind: 'payload',
      mass: 3000,
      center: [3.2, 0, 2],
      shape: { kind: 'point' },
    });
    const wide = spoiled(json, ['hull', 0], [3.3, 0, 2]);
    const result = parseLander(wide);
    const problem = result.ok ? undefined : result.error.find(({ code }) => code === 'lander/center-outside-footprint');
    expect(problem?.path).toBe('legs');
    // 3000 kg at 3.2 m among 4569 kg: 2.101 m, beyond the edge at 2.14 m / sqrt(2)
    expect(problem?.came).toBe('center of mass at 2.1, 0, 0.588 m outside the edge from footpad 3 to 0');
  });

  it('[LA8] duplicate footpads', () => {
    expect(codesOf(spoiled(bolster, ['legs', 'footpads', 1], [1.9, -3.6]))).toEqual(['lander/duplicate-footpad']);
  });

  it('[LA8] footpads that overlap', () => {
    expect(codesOf(spoiled(bolster, ['legs', 'footpads', 1], [1.9, -3.2]))).toEqual(['lander/duplicate-footpad']);
  });

  it('[LA8] all footpads in a line', () => {
    const row = [-3.6, -2, -0.4, 0.8, 2, 3.6].map((y) => [0.2 * y, y]);
    expect(codesOf(spoiled(bolster, ['legs', 'footpads'], row))).toEqual(['lander/footpads-in-line']);
  });
});

describe('landers that cannot exist are refused', () => {
  it('[LA9] crush stages that get weaker', () => {
    expect(spoil(['legs', 'stages', 1, 'force'], 8000)).toEqual(['lander/falling-stages']);
  });

  it('[LA9] moments of inertia of no body', () => {
    expect(spoil(['parts', 2, 'shape', 'moments'], [100, 100, 330])).toEqual(['lander/impossible-moments']);
  });

  it('[LA9] a minimum thrust above the maximum', () => {
    expect(spoil(['engine', 'minThrust'], 9700)).toEqual(['lander/implausible-throttle']);
  });

  it('[LA9] a tank out in space', () => {
    expect(spoil(['tanks', 0, 'offset'], [5, 0])).toContain('lander/outside-hull');
  });

  it('[LA9] a part larger than the lander', () => {
    expect(spoil(['parts', 0, 'shape', 'radius'], 2.5)).toEqual(['lander/outside-hull']);
  });

  it('[LA9] a flat hull', () => {
    const json = structuredClone(bolster) as { hull: number[][]; legs: { hips: number[][] } };
    for (const point of [...json.hull, ...json.legs.hips]) point[2] = 1;
    expect(codesOf(json)).toEqual(['lander/flat-hull']);
  });

  it('[LA9] two parts of one name', () => {
    expect(spoil(['parts', 1, 'name'], 'ring frame')).toEqual(['lander/duplicate-name']);
  });
});

describe('units wrong by a factor of 1000 are refused', () => {
  it('[LA10] no bound between fields leaves room for a factor of 1000', () => {
    for (const [name, { least, most }] of Object.entries(BOUNDS)) {
      if (name === 'partDensity') continue;
      // a radius of gyration goes with the square root of a moment
      const room = name === 'gyration' ? Math.sqrt(1000) : 1000;
      expect(most / least, name).toBeLessThan(room);
    }
  });

  const lengths = /center|size|radius|Radius|length|Length|Height|offset|footpads|hips|hull|Diameter|stroke/;
  const whole: readonly (readonly [string, (path: string) => boolean, number])[] = [
    ['lengths in millimeters', (path) => lengths.test(path), 1000],
    ['lengths in kilometers', (path) => lengths.test(path), 0.001],
    ['masses in grams', (path) => /mass$|density$/.test(path), 1000],
    ['masses in tonnes', (path) => /mass$|density$/.test(path), 0.001],
    ['part masses in tonnes', (path) => path.endsWith('mass'), 0.001],
    ['forces in kilonewtons', (path) => /force$|Thrust$/.test(path), 0.001],
    ['forces in millinewtons', (path) => /force$|Thrust$/.test(path), 1000],
    ['thrusts in kilonewtons', (path) => path.endsWith('Thrust'), 0.001],
    ['crush forces in kilonewtons', (path) => path.endsWith('force'), 0.001],
    ['stiffness in newtons per millimeter', (path) => path.toLowerCase().endsWith('stiffness'), 0.001],
    ['strokes in millimeters', (path) => path.endsWith('stroke'), 1000],
    ['hull points in millimeters', (path) => path.startsWith('hull'), 1000],
    ['lag in milliseconds', (path) => path.endsWith('lag'), 1000],
    ['density in grams per cubic centimeter', (path) => path.endsWith('density'), 0.001],
  ];
  for (const [name, document] of Object.entries(LANDER_FILES)) {
    it.each(whole)(`[LA10] ${name} with %s`, (_, matches, factor) => {
      expect(codesOf(document)).toEqual([]);
      expect(codesOf(scaled(document, matches, factor))).not.toEqual([]);
    });
  }

  /** Single numbers that may be a thousandth and still describe a lander, by path. Everything else is caught. */
  const small =
    /^parts\.\d+\.center|^tanks\.\d+\.(offset|fill|bottomHeight)|^(hull|legs\.footpads|legs\.hips)\.\d+\.[01]$|firstAzimuthDeg|lag$/;

  it.each(Object.entries(LANDER_FILES))('[LA10] any single number of %s times 1000', (_, document) => {
    const passed = numbersIn(document).filter(
      ([path, value]) => value !== 0 && codesOf(spoiled(document, path, value * 1000)).length === 0,
    );
    expect(passed.map(([path]) => path.join('.'))).toEqual([]);
  });

  it.each(Object.entries(LANDER_FILES))('[LA10] any single number of %s over 1000, but those listed', (_, document) => {
    const passed = numbersIn(document).filter(
      ([path, value]) => value !== 0 && codesOf(spoiled(document, path, value / 1000)).length === 0,
    );
    expect(passed.length).toBeGreaterThan(0);
    expect(passed.map(([path]) => path.join('.')).filter((path) => !small.test(path))).toEqual([]);
  });
});

describe('hostile objects are refused', () => {
  it('[LA11] a __proto__ key, and it does not reach any prototype', () => {
    const text = JSON.stringify(trivet).replace('{', '{"__proto__":{"polluted":1},');
    expect(codesOfText(text)).toEqual(['lander/unknown-field']);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  it.each(['constructor', 'toString', 'hasOwnProperty'])('[LA11] a field called %s', (name) => {
    expect(spoil([name], 1)).toEqual(['lander/unknown-field']);
    expect(spoil(['engine', name], 1)).toEqual(['lander/unknown-field']);
  });

  it('[LA11] a field that is only inherited', () => {
    const { mass: _, ...rest } = { mass: 410, name: 'heir', kind: 'dry', center: [0, 0, 1], shape: { kind: 'point' } };
    const heir = Object.assign(Object.create({ mass: 410 }) as object, rest);
    expect(spoil(['parts', 0], heir)).toEqual(['lander/wrong-type']);
  });

  it.each([
    ['null', null],
    ['a number', 3],
    ['text', 'kilter-lander/1'],
    ['a list', []],
    ['a date', new Date(0)],
    ['a map', new Map()],
    ['nothing', undefined],
  ])('[LA11] %s instead of a document', (_, value) => {
    expect(codesOf(value)).toEqual(['lander/wrong-type']);
  });

  it('[LA11] a list with holes', () => {
    const hull: unknown[] = [];
    hull[0] = [0, 0, 1];
    hull[4] = [0, 0, 2];
    expect(spoil(['hull'], hull)).toEqual(['lander/missing-field', 'lander/missing-field', 'lander/missing-field']);
  });

  it('[LA11] an object dressed as a list', () => {
    expect(spoil(['hull'], { length: 4, 0: [0, 0, 1] })).toEqual(['lander/wrong-type']);
  });
});

describe('budgets hold', () => {
  it('[LA12] huge lists are refused unread', () => {
    const huge = Array.from({ length: 200_000 }, () => [0, 0, 1]);
    expect(spoil(['hull'], huge)).toEqual(['lander/wrong-count']);
    // not one entry of this one can be touched
    const trap = new Proxy(Array.from({ length: 1e6 }), {
      get: (target, key) => {
        if (typeof key === 'string' && /^\d+$/.test(key)) throw new Error('an entry was read');
        return Reflect.get(target, key) as unknown;
      },
    });
    expect(spoil(['id'], 'ok')).toEqual([]);
    expect(codesOf({ ...(trivet as object), hull: trap })).toEqual(['lander/wrong-count']);
  });

  it('[LA12] long texts are refused and not quoted whole', () => {
    const result = parseLander(spoiled(trivet, ['name'], 'x'.repeat(1e6)));
    const problems = result.ok ? [] : result.error;
    expect(problems.map(({ code }) => code)).toEqual(['lander/wrong-length']);
    expect(problems.map(formatProblem).join().length).toBeLessThan(200);
  });

  it('[LA12] names are counted in characters, not in the units that hold them', () => {
    expect(spoil(['name'], '🪨'.repeat(60))).toEqual([]);
    expect(spoil(['name'], '🪨'.repeat(61))).toEqual(['lander/wrong-length']);
  });

  it.each(['', ' Trivet', 'Tri\nvet', 'Tri\u0000vet', 'Tri\u202evet', 'Tri\u2028vet'])('[LA12] the name %j', (name) => {
    expect(spoil(['name'], name)).toHaveLength(1);
  });

  it('[LA12] many problems end in one that says there are more', () => {
    const many = Object.fromEntries(Array.from({ length: 5000 }, (_, index) => [`extra${index}`, index]));
    const codes = codesOf({ ...(trivet as object), ...many });
    expect(codes).toHaveLength(41);
    expect(codes.at(-1)).toBe('lander/more-problems');
  });

  it('[LA12] deep nesting is no burden: what is not asked for is not entered', () => {
    let deep: unknown = 1;
    for (let level = 0; level < 100_000; level++) deep = [deep];
    expect(codesOf({ ...(trivet as object), hull: deep })).toEqual(['lander/wrong-count']);
    expect(codesOf({ ...(trivet as object), deep })).toEqual(['lander/unknown-field']);
  });

  it('[LA12] text that nests deeply', () => {
    expect(codesOfText('['.repeat(9) + ']'.repeat(9))).toEqual(['lander/too-deep']);
    expect(codesOfText('['.repeat(30_000) + ']'.repeat(30_000))).toHaveLength(1);
  });

  it('[LA12] text that is too large, by its bytes in UTF-8', () => {
    const text = JSON.stringify(trivet);
    expect(codesOfText(text + ' '.repeat(mostBytes - text.length))).toEqual([]);
    expect(codesOfText(text + ' '.repeat(mostBytes + 1 - text.length))).toEqual(['lander/too-large']);
    for (const [character, bytes] of [
      ['é', 2],
      ['語', 3],
      ['🪨', 4],
    ] as const) {
      const fits = `"${character.repeat(Math.floor((mostBytes - 2) / bytes))}"`;
      expect(codesOfText(fits)).toEqual(['lander/wrong-type']);
      expect(codesOfText(fits.replace('"', `"${character}`))).toEqual(['lander/too-large']);
    }
  });
});

describe('text', () => {
  it.each(['', '{', '{"id":}', "{'id':1}", 'NaN', '\u0000', '{"a":1}x', '"\\"\\"'.repeat(3000)])(
    '[LA13] that is not JSON is a problem, not a throw: %j',
    (text) => {
      expect(codesOfText(text)).toEqual(['lander/not-json']);
    },
  );

  it('[LA13] of every example is read as its document is', () => {
    for (const document of [trivet, steeple, bolster])
      expect(parseLanderText(JSON.stringify(document, null, 2))).toEqual(parseLander(document));
  });

  it('[LA13] with a field named twice is refused, and says where', () => {
    const text = JSON.stringify(trivet, null, 1).replace('"maxThrust"', '"lag": 1,\n"maxThrust"');
    const result = parseLanderText(text);
    const problems = result.ok ? [] : result.error;
    expect(problems.map(({ code }) => code)).toEqual(['lander/repeated-field']);
    const line = 1 + text.slice(0, text.lastIndexOf('"lag"')).split('\n').length - 1;
    expect(problems[0]?.came).toBe(`"lag" again in line ${line}`);
  });

  it('[LA13] with the same name in different objects, in texts, or escaped is read rightly', () => {
    const once = spoiled(trivet, ['summary'], 'has "id": in it, {"id": 1} and [ too');
    expect(codesOfText(JSON.stringify(once))).toEqual([]);
    const escaped = JSON.stringify(trivet).replace('"id"', '"\\u0069d":"trivet","id"');
    expect(codesOfText(escaped)).toEqual(['lander/repeated-field']);
  });
});
