import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { CHECKED_RANGES } from '../../../engine/checks/index.ts';
import { readSource } from '../../support/sources.ts';
import { callEveryFormat, callJson } from './runKilter.ts';

interface Answer {
  readonly outsideCheckedRange: readonly string[];
}
const outsideOf = async (line: string): Promise<readonly string[]> =>
  ((await callJson(line.split(' '))) as Answer).outsideCheckedRange;

/** What lies outside, as machines are told, and all that people read. */
async function bothOf(line: string): Promise<{ readonly outside: readonly string[]; readonly text: string }> {
  const { json, text } = await callEveryFormat(line.split(' '));
  return { outside: (json as Answer).outsideCheckedRange, text };
}

const SMALL_ENVELOPE = '--steps 2 --yaws 1 --coarse 2 --halvings 0';

describe('a result outside the checked range', () => {
  it.each([
    'limit trivet',
    'stance --half-stance 0.5 --center-height 2 --mass 1000 --inertia 0 --worlds moon,earth',
    'touchdown trivet',
    `envelope trivet --from 0 --to 1 --descent-from 1 --descent-to 2 ${SMALL_ENVELOPE}`,
    'compare trivet',
    'disperse trivet --runs 60',
  ])('[CK7] is not claimed by kilter %s', async (line) => {
    const { outside, text } = await bothOf(line);
    expect(outside).toEqual([]);
    expect(text).not.toContain('Outside checked range');
  });

  it.each([
    ['touchdown trivet --missing 2', 'missing legs'],
    ['touchdown trivet --soft 1 --unlatched 2', 'soft legs', 'legs that are not latched'],
    ['touchdown trivet --under-pad 1:0.2', 'a rock or a hole under a footpad'],
    ['touchdown trivet --site saddlers-bench', 'uneven ground'],
    ['touchdown trivet --thrust 2000 --hold 1', 'thrust after contact', 'thrusters that hold after contact'],
    ['touchdown trivet --yaw-rate 3', 'turning about the vertical'],
    ['touchdown trivet --soil-stiffness 1e6 --soil-strength 3e4', 'soil of even bearing strength'],
    [`envelope trivet --from 0 --to 1 --missing 1 ${SMALL_ENVELOPE}`, 'missing legs'],
    ['disperse levels/scenarios/benchArrivals.json --runs 60', 'legs that may be missing, soft or not latched'],
  ])('[CK8] names what was never checked: kilter %s', async (line, ...features) => {
    const { outside, text } = await bothOf(line);
    for (const feature of features) expect(outside).toContain(`${feature}, not checked from outside`);
    expect(text).toContain(`${features[0]}, not checked from outside`);
  });

  it.each([
    ['limit trivet --gravity 24.8', 'gravity 24.8 m/s^2'],
    ['limit --half-stance 0.1 --center-height 10 --mass 100 --inertia 0', 'half stance over height 0.01'],
    ['limit --half-stance 1 --center-height 1 --mass 100 --inertia 400', 'inertia over m L^2 2'],
    ['stance trivet --worlds ceres,earth', 'gravity 0.2839 m/s^2'],
    ['stance trivet --worlds moon', 'half stance over height 1.909'],
    ['touchdown trivet --descent 5', 'descent rate 5 m/s'],
    ['touchdown trivet --pitch 10', 'lean 10 deg'],
    ['touchdown bolster', 'half stance over height 1.161'],
    [`envelope trivet --to 6 ${SMALL_ENVELOPE}`, 'horizontal speed 6 m/s'],
    ['compare trivet --slope 15', 'slope 15 deg'],
    ['disperse trivet --runs 20', 'runs 20'],
  ])('[CK7] is said by kilter %s, to people and to machines', async (line, named) => {
    const { outside, text } = await bothOf(line);
    expect(outside.some((found) => found.startsWith(`${named}, checked from `))).toBe(true);
    expect(text).toContain(`Outside checked range: ${outside.join('; ')}.`);
  });

  it.each([
    ['limit trivet --step 90 --friction 2', ['friction 2, checked from 0 to 1']],
    ['limit trivet --step 90 --friction 2 --closed-form', []],
    [
      'limit trivet --step 90 --descent 4',
      [
        'descent rate 4 m/s, checked from 0 to 3 in the trip limit',
        'descent rate 4 m/s, checked from 0 to 3.05 in the touchdown simulation',
      ],
    ],
    ['limit trivet --step 90 --descent 4 --closed-form', ['descent rate 4 m/s, checked from 0 to 3']],
    ['limit steeple --step 90 --missing 1 --closed-form', ['inertia over m L^2 0.4089, checked from 0 to 0.36']],
    [
      'stance steeple --missing 1 --speed 0.5 --worlds moon',
      ['inertia over m L^2 0.4089, checked from 0 to 0.36', 'missing legs, not checked from outside'],
    ],
  ])('[CK7] is that of the models used, each with its own: kilter %s', async (line, lines) => {
    expect(await outsideOf(line)).toEqual(lines);
  });

  it('[CK7] is said of every ranged field that kilter touchdown asks for, one by one', async () => {
    const { inputs } = (await callJson(['touchdown', 'trivet'])) as { readonly inputs: object };
    const asked = CHECKED_RANGES['touchdown simulation'].flatMap(({ fields, words, most }) =>
      fields.filter((field) => field in inputs).map((field) => ({ field, words, beyond: most + 0.5 })),
    );
    expect(asked.map(({ field }) => field)).toEqual([
      'gravity',
      'slopeDeg',
      'descentRate',
      'horizontalSpeed',
      'friction',
      'pitchDeg',
      'rollDeg',
      'rateDegPerSecond',
      'pitchRateDegPerSecond',
      'rollRateDegPerSecond',
    ]);
    for (const { field, words, beyond } of asked) {
      const option = field.replace(/Deg(PerSecond)?$|(?<=descent)Rate$|(?<=horizontal)Speed$/, '');
      const flag = `--${option.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
      const outside = await outsideOf(`touchdown trivet ${flag} ${beyond}`);
      expect(
        outside.some((found) => found.startsWith(`${words} ${beyond}`)),
        field,
      ).toBe(true);
    }
  });
});

describe('a campaign outside the checked range', () => {
  const bench = JSON.parse(readSource('levels/scenarios/benchArrivals.json')) as Readonly<Record<string, unknown>>;
  const arrivals = { descentRate: 1, friction: 0.8 };
  const pair = { means: [2, 0], deviations: [1, 0.1], correlation: 0.5 };

  it.each([
    [
      'of soil that bears a strength',
      { inputs: arrivals, soil: { kind: 'bearing', stiffness: 1e6, strength: 3e4 } },
      'soil of',
    ],
    [
      'of two inputs drawn together',
      { inputs: arrivals, pairs: [{ inputs: ['downhillSpeed', 'crossSpeed'], ...pair }] },
      'horizontal speed 5 m/s',
    ],
    ['of a body rate', { inputs: { ...arrivals, pitchRateDegPerS: 30 } }, 'body rate 30 deg/s'],
  ])('[CK7] is named: %s', async (_, changes, named) => {
    const { gear: _gear, pairs: _pairs, soil: _soil, padLeg: _padLeg, ...plain } = bench;
    const file = path.join(mkdtempSync(path.join(tmpdir(), 'kilter-')), 'campaign.json');
    writeFileSync(file, JSON.stringify({ ...plain, runs: 60, ...changes }));
    const outside = await outsideOf(`disperse ${file}`);
    expect(outside.some((found) => found.startsWith(named))).toBe(true);
  });
});
