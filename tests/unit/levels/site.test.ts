import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../engine/result.ts';
import { findSite, parseSite, SITES } from '../../../levels/index.ts';
import { ROOT } from '../../support/sources.ts';

const FOLDER = path.join(ROOT, 'levels/sites');
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
const schema = JSON.parse(readFileSync(path.join(ROOT, 'levels/schemas/site.schema.json'), 'utf8')) as object;
const fits = new Ajv({ allErrors: true }).compile(schema);

interface SiteFile extends Record<string, unknown> {
  ground: Record<string, unknown>;
}

function bench(): SiteFile {
  return JSON.parse(readFileSync(path.join(FOLDER, 'saddlersBench.json'), 'utf8')) as SiteFile;
}

function problems(json: unknown): string {
  const parsed = parseSite(json);
  return parsed.ok ? '' : parsed.error.map(formatProblem).join('\n');
}

describe('sites', () => {
  it('[LE1] of ours all load, and are found by their identifier', () => {
    expect(SITES.length).toBe(files.length);
    expect(SITES.length).toBeGreaterThan(3);
    for (const site of SITES) expect(findSite(site.id)).toBe(site);
    expect(new Set(SITES.map(({ id }) => id)).size).toBe(SITES.length);
    expect(findSite('nowhere')).toBeUndefined();
  });

  it.each(files)('[LE1] fit the published schema as the parser takes them: %s', (file) => {
    const json: unknown = JSON.parse(readFileSync(path.join(FOLDER, file), 'utf8'));
    expect(fits(json), JSON.stringify(fits.errors)).toBe(true);
    expect(problems(json)).toBe('');
  });

  it('[LE1] hold slopes in radians', () => {
    const slopes = findSite('coombe-ledge')?.ground.slopes.map(({ slope }) => slope);
    expect(slopes?.[0]).toBeCloseTo((-8 * Math.PI) / 180, 15);
    expect(slopes?.[1]).toBe(0);
  });

  it.each([
    { what: 'another format', spoil: { format: 'kilter-site/0' }, says: 'format: expected "kilter-site/1"' },
    { what: 'no name', spoil: { name: undefined }, says: 'name' },
    { what: 'a field of its own', spoil: { weather: 'fine' }, says: 'weather' },
    { what: 'a ground that is a list', spoil: { ground: [] }, says: 'ground: expected an object' },
  ])('[LE2] are refused with the place named: $what', ({ spoil, says }) => {
    expect(problems({ ...bench(), ...spoil })).toContain(says);
    expect(fits({ ...bench(), ...spoil })).toBe(false);
  });

  it.each([
    { soil: { kind: 'mud' }, says: 'ground.soil.kind: expected one of "rigid", "bearing", "bekker"' },
    { soil: { kind: 'bearing', stiffness: 1e6 }, says: 'ground.soil.strength: expected a value, got nothing' },
    { soil: { kind: 'bearing', stiffness: 1e6, strength: 0 }, says: 'ground.soil.strength: expected a number from 1' },
    { soil: 'soft', says: 'ground.soil: expected an object with a kind' },
  ])('[LE2] are refused with the place named: soil $soil', ({ soil, says }) => {
    const site = bench();
    const json = { ...site, ground: { ...site.ground, soil } };
    expect(problems(json)).toContain(says);
    expect(fits(json)).toBe(false);
  });

  it('[LE2] are refused where descents would begin near or beyond an end', () => {
    expect(problems({ ...bench(), startX: 193 })).toContain('startX: expected a place from -192 to 192 m, got 193');
    expect(problems({ ...bench(), startX: 'left' })).toContain('startX: expected a number from -1000 to 1000 [m]');
    expect(problems({ ...bench(), startX: -192 })).toBe('');
    expect(findSite('saddlers-bench')?.startX).toBe(-45);
  });

  it.each([
    { what: 'NaN friction', spoil: { friction: Number.NaN }, says: 'ground.friction' },
    {
      what: 'a slope of 60 degrees',
      spoil: { slopes: [{ untilX: 240, slopeDeg: 60 }] },
      says: 'ground.slopes[0].slopeDeg',
    },
    {
      what: 'slopes that end short',
      spoil: { slopes: [{ untilX: 100, slopeDeg: 2 }] },
      says: 'the right end of the ground, 240 m',
    },
    {
      what: 'slopes out of order',
      spoil: {
        slopes: [
          { untilX: 50, slopeDeg: 2 },
          { untilX: 40, slopeDeg: 1 },
          { untilX: 240, slopeDeg: 0 },
        ],
      },
      says: 'ground.slopes[1].untilX',
    },
    {
      what: 'crossed wavelengths',
      spoil: { undulation: { rmsHeight: 0.1, shortest: 60, longest: 50, hurst: 0.9 } },
      says: 'ground.undulation.shortest',
    },
    {
      what: 'crossed diameters',
      spoil: { craters: { count: 1, leastDiameter: 9, mostDiameter: 3, depthRatio: 0.1 } },
      says: 'ground.craters.leastDiameter',
    },
    {
      what: 'half a crater',
      spoil: { craters: { count: 0.5, leastDiameter: 3, mostDiameter: 9, depthRatio: 0.1 } },
      says: 'ground.craters.count',
    },
    { what: 'kilometers for meters', spoil: { width: 0.48 }, says: 'ground.width' },
    {
      what: 'a hundred thousand slopes',
      spoil: { slopes: Array.from({ length: 100_000 }, () => ({})) },
      says: 'ground.slopes',
    },
    { what: 'no steps', spoil: { steps: undefined }, says: 'ground.steps' },
  ])('[LE2] are refused with the place named: $what', ({ spoil, says }) => {
    const site = bench();
    expect(problems({ ...site, ground: { ...site.ground, ...spoil } })).toContain(says);
  });
});
