import { describe, expect, it } from 'vitest';
import { CAUTION, STANDARD_GRAVITY } from '../../../engine/constants.ts';
import { WORLDS, findWorld } from '../../../engine/worlds.ts';

/**
 * Surface gravities in the usual two to three figures, as general tables print them [m/s²]. From memory; a second
 * opinion on every typed GM and radius, coarse on purpose: tables differ in the third figure for the small bodies.
 */
const USUAL_FIGURES = new Map([
  ['moon', 1.62],
  ['mars', 3.73],
  ['earth', 9.81],
  ['mercury', 3.7],
  ['venus', 8.87],
  ['vesta', 0.25],
  ['ceres', 0.28],
  ['io', 1.8],
  ['europa', 1.31],
  ['ganymede', 1.43],
  ['callisto', 1.24],
  ['enceladus', 0.113],
  ['titan', 1.35],
  ['triton', 0.78],
  ['pluto', 0.62],
]);

describe('worlds', () => {
  it('[WO1] gives the Moon and Mars the gravity of the check table to all its digits, and Earth the standard value', () => {
    expect(findWorld('moon')?.gravity).toBeCloseTo(1.62422, 5);
    expect(findWorld('mars')?.gravity).toBeCloseTo(3.72787, 5);
    expect(findWorld('earth')?.gravity).toBe(9.80665);
    expect(STANDARD_GRAVITY).toBe(9.80665);
  });

  it('[WO1] agrees for every world with the usual printed figure within two percent', () => {
    expect(WORLDS.length).toBe(USUAL_FIGURES.size);
    const close = WORLDS.filter(({ id, gravity }) => Math.abs(gravity / (USUAL_FIGURES.get(id) ?? 0) - 1) < 0.02);
    expect(close.map((world) => world.id)).toEqual(WORLDS.map((world) => world.id));
  });

  it('[WO1] derives gravity from the listed GM and radius wherever that is the stated basis', () => {
    const derived = WORLDS.filter((world) => world.basis === 'GM over mean radius squared');
    expect(derived.length).toBe(WORLDS.length - 1);
    for (const { gravity, gravitationalParameter = Number.NaN, meanRadius = Number.NaN } of derived) {
      const expected = gravitationalParameter / meanRadius ** 2;
      expect(Math.abs(gravity / expected - 1)).toBeLessThanOrEqual(2 * Number.EPSILON);
    }
  });

  it('[WO1] has one world per identifier, each with a source', () => {
    expect(new Set(WORLDS.map((world) => world.id)).size).toBe(WORLDS.length);
    for (const world of WORLDS) {
      expect(world.id).toMatch(/^[a-z]+$/);
      expect(world.source.length).toBeGreaterThan(20);
    }
  });

  it('[WO2] finds a world by identifier or name in any letter case and finds nothing else', () => {
    expect(findWorld(' MOON ')?.id).toBe('moon');
    expect(findWorld('Ganymede')?.id).toBe('ganymede');
    for (const foreign of ['', 'the moon', 'phobos', 'moon2', '__proto__', 'constructor']) {
      expect(findWorld(foreign)).toBeUndefined();
    }
  });

  it('words the caution exactly', () => {
    expect(CAUTION).toBe(
      'Exercise. Not for operational decisions. Follow your own qualified authority and local rules.',
    );
  });
});
