import { readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { plainFiles } from '../../support/plainFiles.ts';
import { callEveryFormat, callJson, callKilter } from './runKilter.ts';

const { folder, lander } = plainFiles();
afterAll(() => rmSync(folder, { recursive: true }));

/** On Earth a touchdown is over soonest. */
const ARRIVAL = ['--world', 'earth', '--slope', '3', '--descent', '1'];

interface Point {
  readonly value: number;
  readonly mass: number;
  readonly tip: number;
  readonly limit: number;
  readonly margin: number;
}

describe('kilter trade', () => {
  it('gives the limit of kilter limit, its margin from the arrival, and says which dimension buys most', async () => {
    const svg = path.join(folder, 'trade.svg');
    const line = [
      'trade',
      lander,
      ...ARRIVAL,
      '--horizontal',
      '-0.5',
      '--vary',
      'footRadius',
      '--values',
      '1.2',
      '--svg',
      svg,
    ];
    const { text, json, csv } = await callEveryFormat(line);
    const { trades, bought } = json as { trades: { present: number; points: Point[] }[]; bought: { value: number }[] };
    const points = trades[0]!.points;
    const now = points.find(({ value }) => value === trades[0]!.present)!;
    const wider = points.find(({ value }) => value === 1.2)!;
    const limit = (await callJson(['limit', lander, ...ARRIVAL, '--step', '90'])) as { least: { tip: number } };
    expect(now.tip).toBe(limit.least.tip);
    expect(now.margin).toBe(now.limit - 0.5);
    expect(now.limit).toBeLessThanOrEqual(now.tip);
    // a foot twice as far out bears more; legs that no part of the file weighs cost nothing
    expect(wider.tip).toBeGreaterThan(now.tip);
    expect(wider.mass).toBe(now.mass);
    expect(bought).toMatchObject([{ value: 1.2, gain: wider.limit - now.limit, added: 0 }]);
    expect(text).toContain('Most: foot to the long axis from');
    expect(text).toContain('common practice, no source');
    const rows = csv.split('\n').filter((row) => row.startsWith('footRadius,'));
    expect(rows).toHaveLength(2);
    expect(rows[1]).toContain(`,${wider.limit},${wider.margin},`);
    expect(readFileSync(svg, 'utf8')).toContain(CAUTION);
  });

  it('holds two dimensions against each other in a grid, the lander as it is among them', async () => {
    const { text, json, csv } = await callEveryFormat([
      'trade',
      lander,
      ...ARRIVAL,
      '--vary',
      'mass',
      '--values',
      '1400',
      '--against',
      'footRadius',
      '--against-values',
      '1.2',
    ]);
    const { grid } = json as {
      grid: { values: number[]; againstValues: number[]; points: Point[][]; present: Record<string, number> };
    };
    expect(grid.values).toEqual([1400, grid.present['mass']]);
    expect(grid.againstValues).toEqual([grid.present['footRadius'], 1.2]);
    // each row is one foot radius: the wider foot bears more, whatever the mass
    for (const place of [0, 1]) expect(grid.points[1]![place]!.tip).toBeGreaterThan(grid.points[0]![place]!.tip);
    expect(grid.points[0]![0]!.mass).toBeCloseTo(1400, 9);
    expect(text).toMatch(/^Highest: .* foot to the long axis 1\.2 m/m);
    expect(csv.split('\n').filter((row) => /^\d/.test(row))).toHaveLength(4);
  });

  it.each([
    ['--vary speed', /expected names out of legCount/i],
    ['--vary mass,mass', /each once/],
    ['--vary mass,stroke --values 1', /--values goes with --vary and one dimension/],
    ['--against mass', /--against goes with --vary/],
    ['--vary mass --against mass', /not the same/],
    ['--vary mass --against-values 1', /--against-values goes with --against/],
    ['--vary mass --values 1,x', /number/],
    ['--missing 9', /has 4 legs/],
    ['--slope 46', /from 0 to 45 deg/],
  ])('refuses %s in one line before anything is simulated', async (words, why) => {
    const { status, err } = await callKilter(['trade', lander, ...words.split(' ')]);
    expect({ status, lines: err.split('\n').length }).toEqual({ status: 2, lines: 2 });
    expect(err).toMatch(why);
  });
});
