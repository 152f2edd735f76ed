import { describe, expect, it } from 'vitest';
import { massProperties } from '../../../engine/lander/index.ts';
import { findLander } from '../../../levels/index.ts';
import { callJson, callKilter, jsonOf, runKilter } from './runKilter.ts';

/** The worked example of the check table: half stance 1.5 m, height 2 m, I/m 1.5 m². */
const EXAMPLE = ['--half-stance', '1.5', '--center-height', '2', '--mass', '1000', '--inertia', '1500'];
const CAUTION = 'Exercise. Not for operational decisions. Follow your own qualified authority and local rules.';

interface LimitDocument {
  readonly schemaVersion: number;
  readonly caution: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly least: {
    readonly plastic: number;
    readonly lossless: number;
    readonly plasticHorizontal: number;
    readonly azimuthDeg: number;
  };
  readonly byAzimuth: readonly { readonly azimuthDeg: number; readonly plastic: number }[];
  readonly skid: { readonly criticalFriction: number };
}

async function limit(...args: readonly string[]): Promise<LimitDocument> {
  return (await callJson(['limit', ...args])) as LimitDocument;
}

describe('kilter limit', () => {
  // the table of published values: level 4.3589, 2.6875, 1.7740; 5, 8, 12 deg downhill on the Moon 1.5401, 1.3984, 1.2080
  it.each([
    ['earth', '0', 4.3589],
    ['mars', '0', 2.6875],
    ['Moon', '0', 1.774],
    ['MOON', '5', 1.5401],
    ['moon', '8', 1.3984],
    ['moon', '12', 1.208],
    ['earth', '12', 2.9682],
  ])('gives the published trip limit on %s at %s deg downhill', async (world, slope, expected) => {
    const found = await limit(...EXAMPLE, '--world', world, '--slope', slope);
    expect(Math.abs(found.least.plastic - expected)).toBeLessThan(0.00006);
    expect(found.least.plasticHorizontal).toBeCloseTo(
      found.least.plastic * Math.cos((Number(slope) * Math.PI) / 180),
      9,
    );
  });

  it('gives the lossless bound sqrt(2 g (L - h)), lower than the plastic limit', async () => {
    const found = await limit(...EXAMPLE, '--gravity', '1.62');
    expect(found.least.lossless).toBeCloseTo(Math.sqrt(2 * 1.62 * 0.5), 12);
    expect(found.least.lossless).toBeLessThan(found.least.plastic);
    expect(found.skid.criticalFriction).toBe(0.75);
  });

  it('carries version, caution, the inputs with every default filled in, and one row for plain geometry', async () => {
    const found = await limit(...EXAMPLE);
    expect(found.schemaVersion).toBe(1);
    expect(found.caution).toBe(CAUTION);
    expect(found.inputs).toMatchObject({
      halfStance: 1.5,
      inertia: 1500,
      world: 'moon',
      slopeDeg: 0,
      descentRate: null,
      rateDegPerSecond: 0,
      firstContact: 'worst',
    });
    expect(found.byAzimuth).toHaveLength(1);
  });

  it('gives a lander its limit by azimuth, none below the least', async () => {
    const found = await limit('trivet', '--slope', '5', '--step', '10', '--closed-form');
    expect(found.byAzimuth).toHaveLength(36);
    expect(found.byAzimuth.map(({ azimuthDeg }) => azimuthDeg)).toEqual(Array.from({ length: 36 }, (_, i) => 10 * i));
    expect(found.byAzimuth.filter(({ plastic }) => plastic < found.least.plastic - 1e-9)).toEqual([]);
    expect(found.byAzimuth.some(({ plastic }) => plastic > 1.2 * found.least.plastic)).toBe(true);
  });

  it('says so when the slope alone overturns it', async () => {
    const ran = await callKilter(['limit', ...EXAMPLE, '--slope', '40', '--json']);
    expect(ran.status).toBe(0);
    expect(JSON.parse(ran.out)).toMatchObject({ stands: false, least: { stands: false }, skid: null });
    expect((JSON.parse(ran.out) as { least: { staticTiltDeg: number } }).least.staticTiltDeg).toBeCloseTo(36.8699, 4);
  });
});

interface StandDocument {
  readonly stands: boolean;
  readonly least: { readonly tiltDeg: number; readonly azimuthDeg: number; readonly leftDeg: number };
  readonly byAzimuth: readonly { readonly azimuthDeg: number; readonly tiltDeg: number }[];
}

describe('kilter stand', () => {
  it('gives the static tilt of the check table', async () => {
    const found = (await callJson([
      'stand',
      '--half-stance',
      '0.25',
      '--center-height',
      '1',
      '--slope',
      '4',
    ])) as StandDocument;
    // the table of published values: b/h 0.25 is 14.0362 deg
    expect(found.least.tiltDeg).toBeCloseTo(14.0362, 4);
    expect(found.least.leftDeg).toBeCloseTo(10.0362, 4);
  });

  it('gives the mass of a lander, which is that of its parts and liquid', async () => {
    const { mass } = (await callJson(['stand', 'trivet'])) as { mass: number };
    expect(mass).toBe(massProperties(findLander('trivet')!).mass);
    expect((await callKilter(['stand', 'trivet'])).out).toContain(`Mass ${mass.toFixed(0)} kg`);
  });

  it('gives a lander its tilt by azimuth, repeating every 90 deg on four equal legs', async () => {
    const { least, byAzimuth } = (await callJson(['stand', 'trivet'])) as StandDocument;
    const tilts = new Map(byAzimuth.map(({ azimuthDeg, tiltDeg }) => [azimuthDeg, tiltDeg]));
    expect(byAzimuth).toHaveLength(24);
    expect(tilts.get(45)).toBeCloseTo(tilts.get(135) ?? 0, 9);
    expect(Math.min(...tilts.values())).toBeCloseTo(least.tiltDeg, 9);
  });

  it('answers, not fails, when a lander cannot stand on the legs that are left', async () => {
    const ran = await callKilter(['stand', 'trivet', '--missing', '1,2', '--json']);
    expect(ran.status).toBe(0);
    expect(JSON.parse(ran.out)).toMatchObject({ stands: false, least: null, byAzimuth: [] });
  });
});

interface StanceDocument {
  readonly speed: number;
  readonly worlds: readonly {
    readonly world: string;
    readonly halfStance: number;
    readonly ratioToEarth: number;
    readonly halfStanceLossless: number;
  }[];
}

describe('kilter stance', () => {
  // the table of published values: stance for equal speed, plastic pivot, point mass
  it.each([
    ['0.05', 2.446],
    ['0.2', 2.319],
    ['0.5', 2.054],
  ])('from b/h %s on Earth asks for the published multiple on the Moon', async (stance, expected) => {
    const args = ['--half-stance', stance, '--center-height', '1', '--mass', '1', '--inertia', '0'];
    const { worlds } = (await callJson(['stance', ...args, '--worlds', 'moon,earth'])) as StanceDocument;
    expect(worlds.map(({ world }) => world)).toEqual(['moon', 'earth']);
    expect(Math.abs((worlds[0]?.ratioToEarth ?? 0) - expected)).toBeLessThan(0.0005);
    expect(worlds[0]?.halfStance).toBeCloseTo(expected * Number(stance), 3);
    expect(worlds[1]?.ratioToEarth).toBe(1);
    expect(worlds[1]?.halfStance).toBeCloseTo(Number(stance), 9);
  });

  it('asks for the stance whose limit is the speed given', async () => {
    const { speed, worlds } = (await callJson([
      'stance',
      ...EXAMPLE,
      '--speed',
      '2',
      '--worlds',
      'mars',
    ])) as StanceDocument;
    const halfStance = worlds[0]?.halfStance ?? 0;
    const found = await limit(...EXAMPLE.with(1, String(halfStance)), '--world', 'mars');
    expect(speed).toBe(2);
    expect(found.least.plastic).toBeCloseTo(2, 9);
    expect(worlds[0]?.halfStanceLossless).toBeGreaterThan(halfStance);
  });
});

describe('kilter worlds', () => {
  it('lists each world with gravity, basis and source', async () => {
    const { worlds } = (await callJson(['worlds'])) as { worlds: readonly Readonly<Record<string, unknown>>[] };
    expect(worlds.length).toBeGreaterThanOrEqual(15);
    expect(worlds.find(({ id }) => id === 'earth')).toMatchObject({ gravity: 9.80665, basis: 'standard value' });
    expect(worlds.every(({ source, basis }) => typeof source === 'string' && typeof basis === 'string')).toBe(true);
  });
});

describe('the real command, in a process of its own', () => {
  it.each([
    [['stand', 'trivet', '--slope', '5']],
    [['limit', ...EXAMPLE, '--slope', '5']],
    [['stance', ...EXAMPLE]],
    [['worlds']],
  ])('prints for %j what the tests above look at', async (args) => {
    expect(jsonOf(runKilter([...args, '--json']))).toEqual(await callJson(args));
  });
});
