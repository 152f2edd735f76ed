import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { lowerBound } from '../../../engine/dispersion/index.ts';
import { compareUprightLying } from '../../../engine/structure/index.ts';
import { simulateTouchdown, type TouchdownCase } from '../../../engine/touchdown/index.ts';
import { findWorld } from '../../../engine/worlds.ts';
import { findLander } from '../../../levels/index.ts';
import benchArrivals from '../../../levels/scenarios/benchArrivals.json' with { type: 'json' };
import { ROOT } from '../../support/sources.ts';
import { callJson, callKilter } from './runKilter.ts';

const CAUTION = 'Exercise. Not for operational decisions. Follow your own qualified authority and local rules.';
const folder = mkdtempSync(path.join(tmpdir(), 'kilter-simulation-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

async function answer<Document>(...args: readonly string[]): Promise<Document> {
  return (await callJson(args)) as Document;
}

interface TouchdownDocument {
  readonly outcome: string;
  readonly leastMargin: number;
  readonly strokes: readonly number[];
  readonly peakLoads: readonly number[];
  readonly slide: number;
  readonly restTiltDeg: number;
  readonly time: number;
  readonly inputs: Readonly<Record<string, unknown>>;
}

const trivet = findLander('trivet')!;
const gravity = findWorld('moon')?.gravity ?? Number.NaN;

/** Outcome of Steeple near its limit, turned and turning. */
async function steepleEnds(rate: string, yaw: string): Promise<string> {
  const args = ['--horizontal', '2.2', '--descent', '1', '--rate', rate, '--yaw', yaw];
  return (await answer<TouchdownDocument>('touchdown', 'steeple', ...args)).outcome;
}

describe('kilter touchdown', () => {
  it('answers with what the engine simulates for the same state', async () => {
    const found = await answer<TouchdownDocument>(
      'touchdown',
      'trivet',
      '--horizontal',
      '1',
      '--descent',
      '2',
      '--slope',
      '5',
      '--friction',
      '0.7',
    );
    const touchdown: TouchdownCase = {
      lander: trivet,
      gravity,
      ground: { shape: { kind: 'plane', slope: (5 * Math.PI) / 180, fallAzimuth: 0 }, friction: 0.7 },
      state: { horizontalSpeed: 1, descentRate: 2, travelAzimuth: 0 },
    };
    const simulated = simulateTouchdown(touchdown);
    if (!simulated.ok) throw new Error('refused');
    const { outcome, leastMargin, strokes, peakLoads, slide, restTiltDeg, time } = simulated.value;
    expect(found).toMatchObject({
      outcome,
      leastMargin: leastMargin.value,
      strokes,
      peakLoads,
      slide,
      restTiltDeg,
      time,
    });
    expect(found.strokes).toHaveLength(4);
    expect(found.inputs).toMatchObject({ friction: 0.7, slopeDeg: 5, world: 'moon' });
  });

  it('takes uphill as a slope that falls the other way', async () => {
    const uphill = await answer<TouchdownDocument>('touchdown', 'trivet', '--horizontal', '2', '--slope', '-8');
    const turned = await answer<TouchdownDocument>(
      'touchdown',
      'trivet',
      '--horizontal',
      '2',
      '--slope',
      '8',
      '--slope-azimuth',
      '180',
    );
    expect(uphill.leastMargin).toBe(turned.leastMargin);
    expect(uphill.leastMargin).not.toBe(
      (await answer<TouchdownDocument>('touchdown', 'trivet', '--horizontal', '2', '--slope', '8')).leastMargin,
    );
  });

  it('turns a body rate toward the direction of travel whatever the yaw', async () => {
    for (const yaw of ['0', '60', '180']) {
      expect(await steepleEnds('10', yaw)).toMatch(/^tipped/);
      expect(await steepleEnds('-10', yaw)).toBe('upright');
    }
  });

  it('counts legs from 1, and a missing one tells', async () => {
    const sound = await answer<TouchdownDocument>('touchdown', 'trivet', '--descent', '2');
    const lame = await answer<TouchdownDocument>('touchdown', 'trivet', '--descent', '2', '--missing', '1');
    expect(sound.outcome).toBe('upright');
    expect(lame.peakLoads[0]).toBe(0);
    expect(lame.leastMargin).toBeLessThan(sound.leastMargin);
  });

  it.each(['csv', 'json'])('writes the time history as %s, under the caution, and never over a file', async (kind) => {
    const file = path.join(folder, `history.${kind}`);
    const args = ['touchdown', 'trivet', '--descent', '1.5', '--history', file];
    expect((await callKilter(args)).status).toBe(0);
    const text = readFileSync(file, 'utf8');
    expect(text).toContain(CAUTION);
    const times =
      kind === 'json'
        ? (JSON.parse(text) as { samples: { time: number }[] }).samples.map(({ time }) => time)
        : text
            .trim()
            .split('\n')
            .slice(2)
            .map((row) => Number(row.split(',')[0]));
    expect(times.length).toBeGreaterThan(20);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    const again = await callKilter(args);
    expect(again).toMatchObject({ status: 2, err: expect.stringContaining('exists already') as string });
  });
});

describe('a history in JSON', () => {
  it('repeats what was asked for it', async () => {
    const file = path.join(folder, 'asked.json');
    const { inputs } = await answer<TouchdownDocument>('touchdown', 'trivet', '--yaw', '30', '--history', file);
    expect((JSON.parse(readFileSync(file, 'utf8')) as TouchdownDocument).inputs).toEqual(inputs);
  });
});

describe('kilter envelope', () => {
  const ARGS = ['envelope', 'trivet', '--steps', '6', '--yaws', '2', '--slope', '6'] as const;

  it('gives a class for every node, the limits of each row, and the same for every number of workers', async () => {
    const one = await answer<{
      classes: string[][];
      counts: Record<string, number>;
      rowLimits: { descentRate: number; above?: { horizontalSpeed: number } }[];
      isPartial: boolean;
    }>(...ARGS, '--workers', '1');
    const three = await answer(...ARGS, '--workers', '3');
    expect(three).toEqual(one);
    expect(one.classes).toHaveLength(7);
    expect(one.classes.every((row) => row.length === 7)).toBe(true);
    expect(Object.values(one.counts).reduce((sum, count) => sum + count, 0)).toBe(49);
    expect(one.isPartial).toBe(false);
    expect(one.rowLimits.some(({ above }) => (above?.horizontalSpeed ?? 0) > 1)).toBe(true);
  });

  it('prints every node as CSV', async () => {
    const { out } = await callKilter([...ARGS, '--csv']);
    const rows = out
      .trim()
      .split('\n')
      .filter((line) => !line.startsWith('#'));
    expect(rows[0]).toBe('horizontalSpeed,descentRate,class,knowledge,leastMargin');
    expect(rows).toHaveLength(1 + 49);
  });
});

describe('kilter disperse', () => {
  interface DisperseDocument {
    readonly runs: { readonly asked: number; readonly done: number };
    readonly outcomes: Readonly<
      Record<string, { count: number; fraction: number; wilson95: { low: number; high: number } }>
    >;
    readonly requirement: {
      readonly verdict: string;
      readonly atLeast: number;
      readonly runsIfNoMoreFail: number | null;
    };
    readonly worst: readonly { readonly index: number; readonly leastMargin: number }[];
    readonly inputs: { readonly campaign: Readonly<Record<string, unknown>> };
    readonly isPartial: boolean;
  }
  const ARGS = ['disperse', 'trivet', '--runs', '120', '--seed', '3'] as const;

  it('gives the same document for every number of workers, and another for another seed', async () => {
    const one = await answer<DisperseDocument>(...ARGS, '--workers', '1');
    expect(await answer(...ARGS, '--workers', '3')).toEqual(one);
    expect(await answer('disperse', 'trivet', '--runs', '120', '--seed', '4')).not.toEqual(one);
    expect(one.runs).toEqual({ asked: 120, done: 120 });
    expect(Object.values(one.outcomes).reduce((sum, { count }) => sum + count, 0)).toBe(120);
    expect(one.outcomes['upright']?.wilson95.low).toBeLessThan(1);
    expect(one.worst).toHaveLength(10);
  });

  it('judges its requirement with the exact bound', async () => {
    const { requirement, outcomes } = await answer<DisperseDocument>(
      ...ARGS,
      '--fraction',
      '0.9',
      '--confidence',
      '0.95',
    );
    const successes = outcomes['upright']?.count ?? 0;
    expect(requirement.atLeast).toBe(lowerBound({ successes, runs: 120 }, 0.95));
    expect(requirement.verdict).toBe(requirement.atLeast >= 0.9 ? 'met' : 'undecided');
    const strict = await answer<DisperseDocument>(...ARGS, '--fraction', '0.9999');
    expect(strict.requirement.verdict).toBe('undecided');
    expect(strict.requirement.runsIfNoMoreFail).toBeGreaterThan(1000);
  });

  it('repeats from the campaign that its own JSON shows, given as a file', async () => {
    const first = await answer<DisperseDocument>(...ARGS);
    const file = path.join(folder, 'campaign.json');
    writeFileSync(file, JSON.stringify(first.inputs.campaign));
    const again = await answer<DisperseDocument>('disperse', file);
    expect(again).toEqual(first);
  });

  it('runs the example campaign, and options replace what its file says', async () => {
    const found = await answer<DisperseDocument>('disperse', 'levels/scenarios/benchArrivals.json', '--runs', '60');
    expect(found.runs).toEqual({ asked: 60, done: 60 });
    expect(found.inputs.campaign).toEqual({ ...benchArrivals, runs: 60 });
    expect(found.requirement).toMatchObject({ fraction: 0.95, confidence: 0.9 });
  });

  it('runs one of its worst cases again alone, and writes its history', async () => {
    const args = ['disperse', 'levels/scenarios/benchArrivals.json', '--runs', '90', '--seed', '8'];
    const { worst } = await answer<{
      worst: { index: number; outcome: string; leastMargin: number; inputs: object; gear: string[] }[];
    }>(...args);
    expect(worst.some(({ gear }) => gear.length > 0)).toBe(true);
    const file = path.join(folder, 'case.csv');
    for (const { index, outcome, leastMargin, inputs, gear } of worst.slice(0, 5)) {
      const history = index === worst[0]?.index ? ['--history', file] : [];
      const alone = await answer(...args, '--case', String(index), ...history);
      expect(alone).toMatchObject({ outcome, leastMargin, drawn: { inputs, gear }, inputs: { case: index } });
    }
    const least = readFileSync(file, 'utf8').trim().split('\n');
    expect(least[0]).toBe(`# ${CAUTION}`);
    expect(least.length).toBeGreaterThan(10);
  });

  it('prints every case as CSV, and shares of variance when asked', async () => {
    const { out } = await callKilter([...ARGS, '--csv']);
    const rows = out.trim().split('\n');
    expect(rows[0]).toBe(`# ${CAUTION}`);
    expect(rows[1]).toMatch(/^index,outcome,horizontalSpeed,.*,leastMargin,/);
    expect(rows).toHaveLength(2 + 120);
    const { shares } = await answer<{ shares: { name: string }[] }>(...ARGS, '--shares', '4');
    expect(shares.map(({ name }) => name)).toContain('slopeDeg');
  });

  it('says when Ctrl-C stopped it that what it prints is partial, with exit code 130', async () => {
    const child = spawn(
      process.execPath,
      [path.join(ROOT, 'server/cli/kilter.ts'), 'disperse', 'trivet', '--runs', '2000000', '--workers', '1', '--json'],
      { cwd: ROOT },
    );
    let out = '';
    child.stdout.on('data', (chunk: Buffer) => {
      out += chunk.toString();
    });
    setTimeout(() => child.kill('SIGINT'), 2500);
    const code = await new Promise((resolve) => {
      child.on('close', resolve);
    });
    expect(code).toBe(130);
    const found = JSON.parse(out) as DisperseDocument;
    expect(found.isPartial).toBe(true);
    expect(found.runs.done).toBeLessThan(2_000_000);
    expect(found.runs.done).toBeGreaterThan(0);
  });
});

describe('Ctrl-C while the shares of variance are worked out', () => {
  it('keeps the campaign that was done, and says that the shares are not', async () => {
    const line = ['disperse', 'trivet', '--runs', '60', '--shares', '65536', '--workers', '1', '--json'];
    const child = spawn(process.execPath, [path.join(ROOT, 'server/cli/kilter.ts'), ...line], { cwd: ROOT });
    let out = '';
    child.stdout.on('data', (chunk: Buffer) => {
      out += chunk.toString();
    });
    setTimeout(() => child.kill('SIGINT'), 4000);
    const code = await new Promise((resolve) => {
      child.on('close', resolve);
    });
    expect(code).toBe(130);
    expect(JSON.parse(out)).toMatchObject({ isPartial: true, runs: { asked: 60, done: 60 }, shares: null });
  });
});

describe('kilter compare', () => {
  it('shows the figures of the engine, and what lying down buys and costs', async () => {
    const found = await answer<{
      rows: { quantity: string; upright: number; lying: number }[];
      buys: string[];
      costs: string[];
    }>('compare', 'steeple');
    const { rows } = compareUprightLying(findLander('steeple')!, { gravity });
    const [tip, ...figures] = found.rows;
    expect(tip?.quantity).toBe('tip limit, simulated');
    const tipped = async (speed: number): Promise<number> => {
      const line = `touchdown steeple --descent 1 --friction 1.25 --yaws all --horizontal ${speed}`;
      const { byYaw } = await answer<{ byYaw: { outcome: string }[] }>(...line.split(' '));
      return byYaw.filter(({ outcome }) => outcome.startsWith('tipped')).length;
    };
    expect(await tipped((tip?.upright ?? 0) - 0.01)).toBe(0);
    expect(await tipped((tip?.upright ?? 0) + 0.01)).toBeGreaterThan(0);
    expect(figures.map(({ quantity, upright, lying }) => [quantity, upright, lying])).toEqual(
      rows.map(({ quantity, upright, lying }) => [quantity, upright, lying]),
    );
    expect(found.buys).toContain('static tilt');
    expect(found.costs).toContain('half stance');
  }, 60_000);
});

/** Command line, and words that its one line must contain. */
const REFUSED: readonly (readonly [name: string, args: readonly string[], words: readonly string[]])[] = [
  ['touchdown without a lander', ['touchdown'], ['lander']],
  ['a leg that is not there', ['touchdown', 'trivet', '--missing', '9'], ['Trivet has 4 legs', '9']],
  ['a leg with two conditions', ['touchdown', 'trivet', '--missing', '1', '--soft', '1'], ['leg 1', 'two conditions']],
  ['every leg missing', ['touchdown', 'trivet', '--missing', '1,2,3,4'], ['at least one leg']],
  ['a softness of nothing', ['touchdown', 'trivet', '--soft-factor', '0.5'], ['--soft']],
  ['half of a soil', ['touchdown', 'trivet', '--soil-strength', '2e4'], ['--soil-stiffness']],
  ['a lean beyond the horizon', ['touchdown', 'trivet', '--pitch', '120'], ['--pitch', '-80 to 80 deg']],
  ['a speed in mm/s', ['touchdown', 'trivet', '--horizontal', '1500'], ['--horizontal', '100 m/s']],
  [
    'a history nowhere',
    ['touchdown', 'trivet', '--history', '/nowhere/at/all.csv'],
    ['--history', 'cannot be written'],
  ],
  ['half a step', ['envelope', 'trivet', '--steps', '4.5'], ['--steps', 'a whole number']],
  ['one yaw and many', ['envelope', 'trivet', '--yaw', '1', '--yaws', '4'], ['--yaw or --yaws']],
  ['an axis backward', ['envelope', 'trivet', '--from', '2', '--to', '1'], ['--from below --to']],
  ['no workers', ['envelope', 'trivet', '--workers', '0'], ['--workers', '1 to 256']],
  ['JSON and CSV', ['disperse', 'trivet', '--runs', '1', '--json', '--csv'], ['--json or --csv']],
  ['no runs', ['disperse', 'trivet', '--runs', '0'], ['--runs', 'a whole number']],
  ['a negative seed', ['disperse', 'trivet', '--seed', '-1'], ['--seed']],
  ['a case beyond the last', ['disperse', 'trivet', '--runs', '9', '--case', '9'], ['--case', 'from 0 to 8', '9']],
  ['half a case', ['disperse', 'trivet', '--case', '1.5'], ['--case', 'a whole number']],
  ['a case as CSV', ['disperse', 'trivet', '--case', '1', '--csv'], ['--case, or --csv']],
  ['a history of all cases', ['disperse', 'trivet', '--history', 'x.csv'], ['--history goes with --case']],
  ['a percentage', ['disperse', 'trivet', '--fraction', '99'], ['--fraction', '0.000001']],
  ['a foreign method', ['disperse', 'trivet', '--method', 'dice'], ['--method', 'sobol, latin, plain']],
  ['shares of an odd design', ['disperse', 'trivet', '--shares', '100'], ['--shares', 'power of 2']],
  ['a world and a gravity', ['disperse', 'trivet', '--world', 'moon', '--gravity', '2'], ['--world', '--gravity']],
  ['no such campaign', ['disperse', './none.json'], ["'./none.json'", 'nor a file']],
  ['a lander that lies already', ['compare', 'bolster'], ['Bolster', 'lies on its side already']],
  ['an unknown lander', ['compare', 'tripod'], ["'tripod'"]],
];

describe('bad input', () => {
  it.each(REFUSED)('%s ends with exit code 2 and one clear line', async (_, args, words) => {
    const ran = await callKilter(args);
    expect(ran.status).toBe(2);
    expect(ran.out).toBe('');
    expect(ran.err.trim().split('\n')).toHaveLength(1);
    for (const word of words) expect(ran.err).toContain(word);
  });

  it('in a campaign file names the field, what was expected and what it got', async () => {
    const file = path.join(folder, 'bad.json');
    writeFileSync(
      file,
      JSON.stringify({
        format: 'kilter-campaign/1',
        title: 'x',
        lander: 'trivet',
        world: 'moon',
        method: 'plain',
        runs: 10,
        seed: 1,
        inputs: { descentRate: 1, friction: { kind: 'normal', mean: 0.5, deviation: 0.2 } },
      }),
    );
    const ran = await callKilter(['disperse', file]);
    expect(ran.status).toBe(2);
    expect(ran.err).toMatch(/inputs\.friction: expected draws from 0 to 10.*got a normal that reaches from -/);
    expect(existsSync(file)).toBe(true);
  });
});
