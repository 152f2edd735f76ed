import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { simulateTouchdown, type TouchdownCase, type TouchdownConditions } from '../../../engine/touchdown/index.ts';
import { createGround, findLander, findSite } from '../../../levels/index.ts';
import { callJson, callKilter } from './runKilter.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'kilter-options-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

interface Answer {
  readonly outcome: string;
  readonly limitsHit: readonly string[];
  readonly leastMargin: number;
  readonly sinkages: readonly number[];
  readonly strokes: readonly number[];
  readonly time: number;
  readonly tiltAzimuthDeg: number;
  readonly restTiltDeg: number;
  readonly siteSlopeDeg: number | null;
  readonly unsettledReturns: number;
  readonly inputs: Readonly<Record<string, unknown>>;
}
const answerTo = async (line: string): Promise<Answer> => (await callJson(['touchdown', ...line.split(' ')])) as Answer;

const trivet = findLander('trivet')!;
const steeple = findLander('steeple')!;
const bench = findSite('ravel-bank')!;

const LEVEL: TouchdownConditions['ground'] = { shape: { kind: 'plane', slope: 0, fallAzimuth: 0 }, friction: 0.8 };

/** The engine's answer to Trivet at 1.62 m/s^2, 0.8 m/s across and 1.5 m/s down, unless changed. */
function simulated(changes: Partial<TouchdownCase>): ReturnType<typeof simulateTouchdown> {
  const state = { horizontalSpeed: 0.8, descentRate: 1.5, travelAzimuth: 0 };
  return simulateTouchdown({ lander: trivet, gravity: 1.62, ground: LEVEL, state, ...changes });
}
const STATE = '--gravity 1.62 --horizontal 0.8 --descent 1.5';

describe('yaws all round', () => {
  it('warn where they miss the edge or the foot of a six-legged lander, and do not where they take each', async () => {
    const line = 'touchdown steeple --horizontal 0.3 --descent 1.5 --slope 8 --yaws';
    const few = await callKilter([...line.split(' '), '6']);
    expect(few.out).toContain('Warning: too few yaws to see the worst');
    expect((await callKilter([...line.split(' '), '6', '--csv'])).out).toContain('# Warning: too few yaws');
    const all = await callKilter([...line.split(' '), 'all']);
    expect([all.status, all.err]).toEqual([0, '']);
    expect(all.out).not.toContain('Warning');
    const { byYaw } = (await callJson([...line.split(' '), 'all'])) as { byYaw: { outcome: string }[] };
    expect(byYaw).toHaveLength(24);
    expect(byYaw.filter(({ outcome }) => outcome.startsWith('tipped')).length).toBeGreaterThan(2);
  });
});

describe('an option of kilter touchdown', () => {
  it.each<readonly [line: string, changes: Partial<TouchdownCase>]>([
    [
      '--soil-stiffness 1e6 --soil-strength 3e4',
      { ground: { ...LEVEL, soil: { kind: 'bearing', stiffness: 1e6, strength: 3e4 } } },
    ],
    [
      '--soil-stiffness 1e6 --soil-cohesive 1400 --soil-frictional 820000',
      {
        ground: {
          ...LEVEL,
          soil: { kind: 'bekker', cohesive: 1400, frictional: 820_000, exponent: 1, stiffness: 1e6 },
        },
      },
    ],
    [
      '--soil-stiffness 1e6 --soil-cohesive 1400 --soil-frictional 820000 --soil-exponent 0.8',
      {
        ground: {
          ...LEVEL,
          soil: { kind: 'bekker', cohesive: 1400, frictional: 820_000, exponent: 0.8, stiffness: 1e6 },
        },
      },
    ],
    [
      '--under-pad 2:0.4,1:-0.1',
      {
        ground: {
          ...LEVEL,
          underPad: [
            { leg: 1, height: 0.4 },
            { leg: 0, height: -0.1 },
          ],
        },
      },
    ],
    ['--unlatched 2', { legs: [{ leg: 1, kind: 'not latched' }] }],
    ['--unlatched 2 --unlatched-factor 0.4', { legs: [{ leg: 1, kind: 'not latched', factor: 0.4 }] }],
    ['--thrust 3000', { thrust: { thrust: 3000 } }],
    [
      '--thrust 3000 --cutoff-delay 0.5 --tail-off 0.7',
      { thrust: { thrust: 3000, cutoffDelay: 0.5, timeConstant: 0.7 } },
    ],
    ['--hold 3', { hold: { duration: 3 } }],
    ['--hold 3 --hold-bandwidth 2', { hold: { duration: 3, bandwidth: 2 } }],
    ['--max-leg-load 5000', { loadLimits: { legLoad: 5000 } }],
    ['--max-acceleration 5', { loadLimits: { acceleration: 5 } }],
    [
      '--pitch-rate 5 --roll-rate -3 --yaw-rate 8',
      {
        state: {
          horizontalSpeed: 0.8,
          descentRate: 1.5,
          travelAzimuth: 0,
          rates: [(-3 * Math.PI) / 180, (5 * Math.PI) / 180, (8 * Math.PI) / 180],
        },
      },
    ],
    [
      '--site ravel-bank --site-seed 7',
      { ground: { shape: { kind: 'profile', terrain: createGround(bench, 7) }, friction: bench.ground.friction } },
    ],
    [
      '--site Ravel-Bank --friction 0.5',
      { ground: { shape: { kind: 'profile', terrain: createGround(bench, 1) }, friction: 0.5 } },
    ],
  ])('asks the engine for just that: %s', async (line, changes) => {
    const found = await answerTo(`trivet ${STATE} ${line}`);
    const wanted = simulated(changes);
    const plain = simulated({});
    if (!wanted.ok || !plain.ok) throw new Error('refused');
    const { outcome, limitsHit, leastMargin, strokes, sinkages, restTiltDeg, time, unsettledReturns } = wanted.value;
    expect(found).toMatchObject({
      outcome,
      limitsHit,
      leastMargin: leastMargin.value,
      strokes,
      sinkages,
      restTiltDeg,
      time,
      unsettledReturns,
    });
    // and it makes a difference
    expect({ ...wanted.value }).not.toEqual({ ...plain.value });
  });

  it('puts the place of touchdown where it says', async () => {
    const found = await answerTo(`trivet ${STATE} --site ravel-bank --site-x 30`);
    const ground = createGround(bench, 1);
    const shape = { kind: 'profile', terrain: ground } as const;
    const there = simulated({
      ground: { shape, friction: ground.friction },
      state: { horizontalSpeed: 0.8, descentRate: 1.5, travelAzimuth: 0, position: [30, 0] },
    });
    if (!there.ok) throw new Error('refused');
    expect(found.outcome).toBe(there.value.outcome);
    // the same ground counted from elsewhere: rounding apart
    expect(found.leastMargin).toBeCloseTo(there.value.leastMargin.value, 9);
    expect(found.time).toBe(there.value.time);
  });
});

describe('a site as ground', () => {
  it('[LE10] brings its soft ground, in words and in the echo, until another soil is given', async () => {
    const dust = await answerTo(`trivet ${STATE} --site pinfold-plain`);
    expect(dust.inputs).toMatchObject({
      soilCohesive: 1400,
      soilFrictional: 300_000,
      soilExponent: 1,
      soilStrength: null,
    });
    expect(Math.max(...dust.sinkages)).toBeGreaterThan(0.01);
    const { out } = await callKilter(['touchdown', 'trivet', '--site', 'pinfold-plain']);
    expect(out).toContain('soil with k_c 1400, k_phi 300000, n 1');
    const firm = await answerTo(`trivet ${STATE} --site pinfold-plain --soil-stiffness 1e6 --soil-strength 1e8`);
    expect(firm.inputs).toMatchObject({ soilStrength: 1e8, soilCohesive: null });
    expect(Math.max(...firm.sinkages)).toBe(0);
  });

  const smooth = path.join(folder, 'ramp.json');
  writeFileSync(
    smooth,
    JSON.stringify({
      format: 'kilter-site/1',
      id: 'ramp',
      name: 'Ramp',
      summary: 'An even ramp.',
      ground: {
        width: 200,
        spacing: 1,
        friction: 0.6,
        slopes: [{ untilX: 100, slopeDeg: -6 }],
        undulation: { rmsHeight: 0, shortest: 4, longest: 40, hurst: 0.8 },
        craters: { count: 0, leastDiameter: 2, mostDiameter: 8, depthRatio: 0.1 },
        steps: { count: 0, mostHeight: 0.1, width: 1 },
      },
    }),
  );

  it('that is an even ramp is the slope of the same angle, whichever way the lander travels over it', async () => {
    for (const azimuth of [0, 90, 180, 250]) {
      const ramp = await answerTo(`trivet ${STATE} --yaw 20 --site ${smooth} --site-azimuth ${azimuth}`);
      const plane = await answerTo(`trivet ${STATE} --yaw 20 --slope 6 --slope-azimuth ${azimuth} --friction 0.6`);
      expect(ramp.outcome).toBe(plane.outcome);
      expect(ramp.leastMargin).toBeCloseTo(plane.leastMargin, 2);
      expect(ramp.restTiltDeg).toBeCloseTo(plane.restTiltDeg, 1);
      // where it leans clearly, it leans the same way
      expect(plane.restTiltDeg).toBeGreaterThan(2);
      expect(Math.abs(ramp.tiltAzimuthDeg - plane.tiltAzimuthDeg)).toBeLessThan(3);
      expect(ramp.siteSlopeDeg).toBeCloseTo(6, 6);
      expect(plane.siteSlopeDeg).toBeNull();
    }
  });

  it('takes its slope under the stance into the checked range', async () => {
    const text = readFileSync(smooth, 'utf8').replace('-6', '-20');
    const steep = path.join(folder, 'steep.json');
    writeFileSync(steep, text);
    expect((await callKilter(['touchdown', 'trivet', '--site', steep])).out).toContain(
      'Outside checked range: slope 20 deg',
    );
    expect((await callKilter(['touchdown', 'trivet', '--site', smooth])).out).toContain(
      'Outside checked range: uneven ground, not checked from outside.',
    );
  });

  it('is named in words with its seed, its place and its slope', async () => {
    const { out } = await callKilter(['touchdown', 'trivet', '--site', 'ravel-bank', '--site-x', '30']);
    expect(out).toMatch(/^On Ravel Bank \(seed 1\) at 30 m, falling \d+\.\d deg under the stance, friction 0\.8\.$/m);
  });

  it('serves an envelope as well, and its grid agrees with single touchdowns', async () => {
    const line = 'trivet --site ravel-bank --site-x 30 --site-azimuth 180 --yaw 45';
    const { classes, inputs } = (await callJson([
      'envelope',
      ...line.split(' '),
      ...'--from -3 --to 3 --descent-from 1 --descent-to 3 --steps 2 --every'.split(' '),
    ])) as { classes: string[][]; inputs: Record<string, unknown> };
    expect(inputs).toMatchObject({ site: 'ravel-bank', siteX: 30, siteAzimuthDeg: 180, slopeDeg: null });
    let ended = 0;
    for (const [row, descent] of [1, 2, 3].entries())
      for (const [column, horizontal] of [-3, 0, 3].entries()) {
        const { limitsHit } = await answerTo(`${line} --horizontal ${horizontal} --descent ${descent}`);
        expect(limitsHit.length === 0).toBe(classes[row]?.[column] === 'inside');
        if (limitsHit.length > 0) ended++;
      }
    expect(ended).toBeGreaterThan(1);
  });
});

/** Which option says what a name of the inputs holds. */
const OPTION_OF: Readonly<Record<string, string>> = {
  world: '--world',
  gravity: '--gravity',
  slopeDeg: '--slope',
  slopeAzimuthDeg: '--slope-azimuth',
  site: '--site',
  siteSeed: '--site-seed',
  siteX: '--site-x',
  siteAzimuthDeg: '--site-azimuth',
  friction: '--friction',
  underPad: '--under-pad',
  soilStiffness: '--soil-stiffness',
  soilStrength: '--soil-strength',
  soilCohesive: '--soil-cohesive',
  soilFrictional: '--soil-frictional',
  soilExponent: '--soil-exponent',
  missing: '--missing',
  soft: '--soft',
  softFactor: '--soft-factor',
  unlatched: '--unlatched',
  unlatchedFactor: '--unlatched-factor',
  thrust: '--thrust',
  cutoffDelay: '--cutoff-delay',
  tailOff: '--tail-off',
  hold: '--hold',
  holdBandwidth: '--hold-bandwidth',
  maxLegLoad: '--max-leg-load',
  maxAcceleration: '--max-acceleration',
  horizontalSpeed: '--horizontal',
  descentRate: '--descent',
  yawDeg: '--yaw',
  pitchDeg: '--pitch',
  rollDeg: '--roll',
  rateDegPerSecond: '--rate',
  pitchRateDegPerSecond: '--pitch-rate',
  rollRateDegPerSecond: '--roll-rate',
  yawRateDegPerSecond: '--yaw-rate',
  height: '--height',
  mass: '--mass',
  yaws: '--yaws',
};

/** The command line that the inputs of an answer describe. */
function lineOf({ lander, ...inputs }: Readonly<Record<string, unknown>>): string {
  const words = Object.entries(inputs).flatMap(([name, value]) => {
    if (value === null || (Array.isArray(value) && value.length === 0)) return [];
    // one of the two is enough, and both are refused
    if (name === 'gravity' && inputs['world'] !== null) return [];
    const text = Array.isArray(value) ? value.map(wordOf).join(',') : wordOf(value);
    return [OPTION_OF[name] ?? name, text];
  });
  return [String(lander), ...words].join(' ');
}

function wordOf(item: unknown): string {
  if (typeof item === 'string' || typeof item === 'number') return String(item);
  const { leg, height } = item as { leg: number; height: number };
  return `${leg}:${height}`;
}

interface Sweep {
  readonly outcomes: Readonly<Record<string, number>>;
  readonly worst: { readonly yawDeg: number; readonly outcome: string; readonly leastMargin: number };
  readonly byYaw: readonly Readonly<Record<string, unknown>>[];
  readonly inputs: Readonly<Record<string, unknown>>;
}
const sweepOf = async (line: string): Promise<Sweep> => (await callJson(['touchdown', ...line.split(' ')])) as Sweep;

describe('many yaws', () => {
  const LINE = `trivet ${STATE} --slope 6 --slope-azimuth 30`;

  it('are each the touchdown of that yaw, and the worst has the least margin', async () => {
    const { byYaw, outcomes, worst, inputs } = await sweepOf(`${LINE} --yaws 5`);
    expect(byYaw.map(({ yawDeg }) => yawDeg)).toEqual([0, 72, 144, 216, 288]);
    for (const { yawDeg, ...row } of byYaw) {
      const { outcome, leastMargin, restTiltDeg, time } = await answerTo(`${LINE} --yaw ${String(yawDeg)}`);
      expect(row).toMatchObject({ outcome, leastMargin, restTiltDeg, time });
    }
    expect(outcomes).toEqual({ upright: 5 });
    expect(worst.leastMargin).toBe(Math.min(...byYaw.map(({ leastMargin }) => Number(leastMargin))));
    expect(inputs).toMatchObject({ yawDeg: null, yaws: 5 });
  });

  it('put tipping before any margin, and name the yaws at which it happens', async () => {
    const line = 'steeple --horizontal 0.8 --descent 1.5 --slope 8';
    const { byYaw, outcomes, worst } = await sweepOf(`${line} --yaws 24`);
    const tipped = byYaw.filter(({ outcome }) => outcome === 'tipped downhill').map(({ yawDeg }) => yawDeg);
    expect(tipped.length).toBeGreaterThan(3);
    expect(tipped.length).toBeLessThan(24);
    expect(outcomes).toEqual({ upright: 24 - tipped.length, 'tipped downhill': tipped.length });
    expect(worst.outcome).toBe('tipped downhill');
    const { out } = await callKilter(['touchdown', ...line.split(' '), '--yaws', '24']);
    expect(out).toContain(`Tips at yaw ${tipped.join(', ')} deg.`);
  });

  it('say when it tips at every one', async () => {
    const { out } = await callKilter('touchdown steeple --horizontal 4 --slope 8 --yaws 3'.split(' '));
    expect(out).toContain('Tips at every yaw.');
  });

  it('stand in CSV a row each, with the columns of a single touchdown', async () => {
    const many = (await callKilter(['touchdown', ...LINE.split(' '), '--yaws', '16', '--csv'])).out.split('\n');
    const one = (await callKilter(['touchdown', ...LINE.split(' '), '--yaw', '90', '--csv'])).out.split('\n');
    expect(many).toHaveLength(1 + 1 + 16 + 1);
    expect(one).toEqual([many[0], many[1], many[2 + 4], '']);
  });
});

describe('the JSON of a touchdown', () => {
  it.each([
    'trivet',
    `trivet ${STATE} --slope -4 --slope-azimuth 30 --yaw 10 --pitch 2 --roll -3 --rate 4 --height 0.5`,
    'trivet --world mars --soil-stiffness 1e6 --soil-strength 3e4 --missing 1 --soft 2 --unlatched 3',
    'steeple --soil-stiffness 1e6 --soil-cohesive 0 --soil-frictional 1e6 --soft 1,2 --soft-factor 0.3',
    'steeple --thrust 5000 --tail-off 0 --hold 1 --max-leg-load 1e5 --max-acceleration 50 --unlatched 2 --unlatched-factor 0.2',
    'bolster --site tallow-hollow --site-seed 3 --site-x -20.5 --site-azimuth 90 --under-pad 1:0.2,3:-0.05 --friction 0.5',
    'trivet --slope 5 --yaws 3',
    'trivet --mass 1900 --descent 2',
    'trivet --pitch 10 --yaw 40 --rate 3 --pitch-rate 1 --roll-rate 2 --yaw-rate -3',
  ])('repeats its inputs, so that the run can be had again from them: %s', async (line) => {
    const first = await answerTo(line);
    const again = await answerTo(lineOf(first.inputs));
    expect(again).toEqual(first);
  });

  it('has a name for every option of the command, and no other', async () => {
    const { out } = await callKilter(['touchdown', '--help']);
    const offered = [...out.matchAll(/^ {2}(--[a-z-]+) /gm)].map((match) => match[1] ?? '');
    const { inputs } = await answerTo('trivet');
    expect(offered.filter((option) => !['--history', '--json', '--csv'].includes(option)).toSorted()).toEqual(
      Object.values(OPTION_OF).toSorted(),
    );
    expect(Object.keys(inputs).toSorted()).toEqual(['lander', ...Object.keys(OPTION_OF)].toSorted());
  });
});

/** Command line, and words that its one line must contain. */
const REFUSED: readonly (readonly [line: string, words: readonly string[]])[] = [
  ['trivet --site nowhere', ['--site', "'nowhere'", 'saddlers-bench', 'nor a file']],
  ['trivet --site ravel-bank --slope 3', ['--site, or --slope', 'got both']],
  ['trivet --site ravel-bank --slope-azimuth 3', ['--site, or --slope', 'got both']],
  ['trivet --site ravel-bank --site-x 999', ['--site-x', 'from -240 to 240 m', '999']],
  ['trivet --site ravel-bank --site-seed 1.5', ['--site-seed', 'a whole number']],
  ['trivet --site-x 3', ['--site-x goes with --site']],
  ['trivet --site-seed 3', ['--site-seed goes with --site']],
  ['trivet --site-azimuth 3', ['--site-azimuth goes with --site']],
  ['trivet --site package.json', ['package.json', 'format']],
  ['trivet --under-pad 2', ['--under-pad', 'such as 2:0.3', "'2'"]],
  ['trivet --under-pad 2:0.3m', ['--under-pad', 'such as 2:0.3']],
  ['trivet --under-pad 2:11', ['--under-pad', 'from -10 to 10 m']],
  ['trivet --under-pad 2:0.3,2:0.1', ['--under-pad', 'each leg once']],
  ['trivet --under-pad 0:0.3', ['--under-pad', 'counted from 1']],
  ['trivet --under-pad 5:0.3', ['--under-pad', 'Trivet has 4 legs', '5']],
  ['trivet --soil-stiffness 1e6', ['--soil-strength', 'together']],
  ['trivet --soil-cohesive 1400', ['--soil-stiffness, --soil-cohesive and --soil-frictional together']],
  ['trivet --soil-exponent 1', ['--soil-frictional', 'together']],
  [
    'trivet --soil-stiffness 1e6 --soil-strength 3e4 --soil-frictional 1e6',
    ['--soil-strength', "Bekker's law", 'got both'],
  ],
  [
    'trivet --soil-stiffness 1e6 --soil-cohesive 0 --soil-frictional 1e6 --soil-exponent 9',
    ['--soil-exponent', '0.2 to 3'],
  ],
  ['trivet --thrust -1', ['--thrust', 'a number from 0']],
  ['trivet --thrust 1e8', ['--thrust', `at most the ${trivet.engine.maxThrust} N of Trivet`, '100000000']],
  ['steeple --thrust 1e8', [`at most the ${steeple.engine.maxThrust} N of Steeple`]],
  ['trivet --tail-off 1', ['--tail-off', 'go with --thrust']],
  ['trivet --cutoff-delay 1', ['--cutoff-delay', 'go with --thrust']],
  ['trivet --hold-bandwidth 1', ['--hold-bandwidth goes with --hold']],
  ['trivet --hold -1', ['--hold', 'a number from 0 to 1000 s']],
  ['trivet --unlatched-factor 0.1', ['--unlatched-factor goes with --unlatched']],
  ['trivet --unlatched 1 --unlatched-factor 2', ['--unlatched-factor', '0.001 to 1']],
  ['trivet --max-leg-load 0', ['--max-leg-load', 'a number from 1']],
  ['trivet --yaws 4 --yaw 3', ['--yaws, or --yaw', 'got both']],
  ['trivet --yaws 4 --history x.csv', ['--yaws, or --yaw or --history', 'got both']],
  ['trivet --yaws 0', ['--yaws', '1 to 360 yaws']],
  ['trivet --rate 360 --pitch-rate 360', ['rates[1]', '-10 to 10 rad/s']],
];

describe('bad input to an option of kilter touchdown', () => {
  it.each(REFUSED)('%s ends with exit code 2 and one clear line', async (line, words) => {
    const ran = await callKilter(['touchdown', ...line.split(' ')]);
    expect(ran).toMatchObject({ status: 2, out: '' });
    expect(ran.err).toMatch(/^kilter: [^\n]+\n$/);
    for (const word of words) expect(ran.err).toContain(word);
  });
});
