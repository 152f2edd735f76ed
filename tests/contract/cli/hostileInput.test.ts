import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { CAMPAIGN_BUDGET } from '../../../engine/dispersion/index.ts';
import { LANDER_BUDGET } from '../../../engine/lander/index.ts';
import { SITE_BUDGET } from '../../../levels/index.ts';
import { readSource } from '../../support/sources.ts';
import { callKilter, runKilter, type Ran } from './runKilter.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'kilter-hostile-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

function file(name: string, content: string | Uint8Array): string {
  const at = path.join(folder, name);
  writeFileSync(at, content);
  return at;
}

const trivet = readSource('levels/landers/trivet.json');
const swap = (from: string, to: string): string => {
  if (!trivet.includes(from)) throw new Error(`trivet.json no longer says ${from}`);
  return trivet.replace(from, to);
};

const GEOMETRY = ['--half-stance', '1.5', '--center-height', '2', '--mass', '1000', '--inertia', '1500'];

/** Command line, and words that its one line must contain. */
const CASES: readonly (readonly [name: string, args: readonly string[], words: readonly string[]])[] = [
  [
    'an unknown verb',
    ['fly'],
    [
      "unknown command 'fly'",
      'stand, limit, stance, touchdown, envelope, disperse, compare, trade, report, descend, drill, hall, replay, records, worlds, check',
    ],
  ],
  [
    'help on an unknown verb',
    ['help', 'fly'],
    [
      'unknown command',
      'stand, limit, stance, touchdown, envelope, disperse, compare, trade, report, descend, drill, hall, replay, records, worlds, check',
    ],
  ],
  ['an unknown option', ['limit', 'trivet', '--spin', '3'], ["unknown option '--spin'"]],
  ['an option without its value', ['limit', 'trivet', '--slope'], ['--slope', 'argument missing']],
  ['an argument too many', ['worlds', 'moon'], ['too many arguments']],
  ['no lander and no geometry', ['limit'], ['a lander', '--half-stance']],
  ['no lander and no geometry to stand', ['stand'], ['a lander', '--half-stance']],
  ['a lander and plain geometry', ['limit', 'trivet', ...GEOMETRY], ['either a lander or plain geometry']],
  ['half of a geometry', ['limit', '--half-stance', '1'], ['--center-height, --mass, --inertia']],
  ['an unknown built-in lander', ['stand', 'tripod'], ["'tripod'", 'trivet, steeple, bolster']],
  ['a lander misspelt', ['stand', 'trivett'], ["'trivett'", 'did you mean trivet?']],
  ['a name of an object prototype', ['stand', '__proto__'], ["'__proto__'", 'trivet, steeple, bolster']],
  ['an empty lander', ['stand', ''], ['trivet, steeple, bolster']],
  ['a missing file', ['stand', './none.json'], ["'./none.json'", 'nor a file']],
  ['a folder', ['stand', folder], ['is not a file']],
  ['a name with line breaks', ['stand', 'a\nb\r\nc'], ["'a b c'"]],
  ['a very long name', ['stand', 'x'.repeat(200)], ['…']],
  ['an unknown world', ['limit', 'trivet', '--world', 'phobos'], ['moon, mars, earth', 'pluto', 'phobos']],
  ['an empty world', ['limit', 'trivet', '--world', ''], ['--world']],
  ['a world and a gravity', ['limit', 'trivet', '--world', 'moon', '--gravity', '2'], ['--world', '--gravity']],
  ['the same option twice', ['limit', 'trivet', '--slope', '1', '--slope', '2'], ['more than once']],
  ['an unknown world among several', ['stance', 'trivet', '--worlds', 'moon,venas'], ['venas', 'moon, mars, earth']],
  ['a world named twice', ['stance', 'trivet', '--worlds', 'moon,mars,Moon'], ['moon', 'twice']],
  ['a negative mass', ['limit', ...GEOMETRY.with(5, '-1000')], ['--mass', "'-1000'", '0.001']],
  ['no mass at all', ['limit', ...GEOMETRY.with(5, '0')], ['--mass', "'0'"]],
  ['a negative inertia', ['limit', ...GEOMETRY.with(7, '-1')], ['--inertia', "'-1'"]],
  ['an inertia in grams', ['limit', ...GEOMETRY.with(7, '1500000')], ['--inertia', 'at most 625000 kg m^2', 'units']],
  ['a half stance of zero', ['limit', ...GEOMETRY.with(1, '0')], ['--half-stance', "'0'"]],
  ['a half stance in millimeters', ['limit', ...GEOMETRY.with(1, '1500')], ['--half-stance', '1000 m']],
  ['NaN', ['limit', ...GEOMETRY, '--slope', 'NaN'], ['--slope', 'a number from -80 to 80 deg']],
  ['infinity', ['limit', ...GEOMETRY, '--descent', 'Infinity'], ['--descent', "'Infinity'"]],
  ['a number beyond all numbers', ['limit', ...GEOMETRY, '--gravity', '1e999'], ['--gravity', "'1e999'"]],
  ['a number with its unit', ['limit', ...GEOMETRY, '--slope', '5deg'], ['--slope', "'5deg'"]],
  ['a decimal comma', ['limit', ...GEOMETRY, '--slope', '5,5'], ['--slope', "'5,5'"]],
  ['a negative descent rate', ['limit', ...GEOMETRY, '--descent', '-1'], ['--descent', "'-1'"]],
  ['a wall for a slope', ['stand', 'trivet', '--slope', '90'], ['--slope', "'90'"]],
  ['an unknown first contact', ['limit', 'trivet', '--first-contact', 'both'], ['leading, trailing, together']],
  ['a missing leg on plain geometry', ['stand', ...GEOMETRY, '--missing', '1'], ['--missing', 'lander']],
  ['a leg number of zero', ['stand', 'trivet', '--missing', '0'], ['--missing', 'counted from 1']],
  ['a leg that is not there', ['stand', 'trivet', '--missing', '5'], ['--missing', '5', '4 legs']],
  ['a step that does not close the circle', ['stand', 'trivet', '--step', '7'], ['--step', 'divisor of 360']],
  ['a step on plain geometry', ['stand', ...GEOMETRY, '--step', '10'], ['--step']],
  ['a fall line on plain geometry', ['limit', ...GEOMETRY, '--fall-azimuth', '10'], ['--fall-azimuth']],
  ['a stance for a lander that cannot stand', ['stance', 'trivet', '--missing', '1,2'], ['does not stand']],
  ['a stance without speed where nothing stands', ['stance', 'trivet', '--slope', '60'], ['--speed']],
  ['a speed of zero', ['stance', ...GEOMETRY, '--speed', '0'], ['--speed', "'0'"]],
  ['an empty file', ['stand', file('empty.json', '')], ['empty.json', 'JSON']],
  ['malformed JSON', ['stand', file('torn.json', trivet.slice(0, 300))], ['torn.json', 'JSON']],
  ['JSON that is no lander', ['stand', file('list.json', '[1, 2]')], ['list.json', 'an object']],
  ['bytes that are no text', ['stand', file('bytes.json', Uint8Array.of(0xff, 0xfe, 0x00, 0x80))], ['UTF-8']],
  ['deep nesting', ['stand', file('deep.json', '['.repeat(5000) + ']'.repeat(5000))], ['deep.json', 'levels']],
  [
    'a huge lander file',
    ['stand', file('huge.json', ' '.repeat(2_000_000))],
    ['huge.json', `at most ${LANDER_BUDGET.mostBytes} bytes for a lander file, got 2000000`],
  ],
  [
    'a lander file of a byte too many',
    ['stand', file('byte.json', trivet.padEnd(LANDER_BUDGET.mostBytes + 1))],
    ['byte.json', `at most ${LANDER_BUDGET.mostBytes} bytes for a lander file, got ${LANDER_BUDGET.mostBytes + 1}`],
  ],
  [
    'a huge campaign file',
    ['disperse', file('huge-campaign.json', ' '.repeat(2_000_000))],
    ['huge-campaign.json', `at most ${CAMPAIGN_BUDGET.mostBytes} bytes for a campaign file, got 2000000`],
  ],
  [
    'a lander lighter than with empty tanks',
    ['touchdown', 'trivet', '--mass', '100'],
    ['--mass: Trivet weighs from 1510 kg, tanks empty, to ', 'got 100'],
  ],
  [
    'a huge site file',
    ['touchdown', 'trivet', '--site', file('huge-site.json', ' '.repeat(2_000_000))],
    ['huge-site.json', `at most ${SITE_BUDGET.mostBytes} bytes for a site file, got 2000000`],
  ],
  ['a site that is torn', ['touchdown', 'trivet', '--site', file('torn-site.json', '{')], ['torn-site.json', 'JSON']],
  [
    'a field of a site given twice',
    ['touchdown', 'trivet', '--site', file('twice-site.json', '{"id": 1,\n\n"id": 2}')],
    ['"id" again in line 3'],
  ],
  [
    'a lander file as large as a campaign',
    ['disperse', file('fat.json', trivet.padEnd(LANDER_BUDGET.mostBytes + 1))],
    ['fat.json', `at most ${LANDER_BUDGET.mostBytes} bytes for a lander file`],
  ],
  [
    'a site for a campaign',
    ['disperse', 'levels/sites/ravelBank.json'],
    ['format: expected "kilter-campaign/1" or "kilter-lander/1", got "kilter-site/1"'],
  ],
  ['a campaign that is torn', ['disperse', file('torn-campaign.json', '{"format": "kilter-campaign/1"')], ['JSON']],
  [
    'a field of a campaign given twice',
    ['disperse', file('twice.json', '{"format": "kilter-campaign/1",\n"runs": 1, "runs": 2}')],
    ['twice.json', '"runs" again in line 2'],
  ],
  [
    'a negative mass in a file',
    ['stand', file('mass.json', swap('"mass": 410', '"mass": -410'))],
    ['parts[0].mass', '-410'],
  ],
  ['NaN in a file', ['stand', file('nan.json', swap('"mass": 410', '"mass": NaN'))], ['nan.json', 'JSON']],
  [
    'a unit factor of 1000',
    ['stand', file('mm.json', swap('"radius": 2.14', '"radius": 2140'))],
    ['legs.radius', '2140'],
  ],
  ['a single leg', ['stand', file('leg.json', swap('"count": 4', '"count": 1'))], ['legs.count', '1']],
  [
    'a file with two things wrong',
    ['stand', file('two.json', swap('"mass": 410', '"mass": -410').replace('"radius": 2.14', '"radius": 2140'))],
    ['parts[0].mass', '-410', 'legs.radius', '2140'],
  ],
  [
    'a misspelt field',
    ['stand', file('spelled.json', swap('"probeLength"', '"probeLenght"'))],
    ['probeLenght', 'probeLength'],
  ],
];

/** What is wrong with a refusal; nothing when it is as it should be. */
function faultsOf({ status, out, err }: Ran, words: readonly string[]): readonly string[] {
  return [
    ...(status === 2 ? [] : [`exit code ${status}`]),
    ...(out === '' ? [] : [`on stdout: ${out}`]),
    ...(/^kilter: [^\n]+\n$/.test(err) ? [] : [`not one line: ${err}`]),
    ...(/\n\s+at |Error:|undefined|Broken contract/.test(err) ? [`not for people: ${err}`] : []),
    ...words.filter((word) => !err.includes(word)).map((word) => `no '${word}' in: ${err}`),
  ];
}

describe('bad input', () => {
  it.each(CASES)('%s ends with exit code 2 and one clear line', async (_name, args, words) => {
    expect(faultsOf(await callKilter(args), words)).toEqual([]);
  });

  it.each(CASES.filter((_, index) => index % 7 === 0))('%s does so in a process of its own', (_name, args, words) => {
    expect(faultsOf(runKilter(args), words)).toEqual([]);
  });

  it('is refused in the same way when JSON was asked for', async () => {
    expect(faultsOf(await callKilter(['limit', 'trivet', '--world', 'phobos', '--json']), ['phobos'])).toEqual([]);
  });
});
