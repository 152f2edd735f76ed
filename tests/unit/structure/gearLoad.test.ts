import { describe, expect, it } from 'vitest';
import { bodyTube, gearLoad, worstUse } from '../../../engine/structure/gearLoad.ts';
import { plainLander, type PlainLanderShape } from '../../support/plainLander.ts';

const MOON = 1.62422;
const LEG = 20_000;

function namesOf(shape: PlainLanderShape): readonly string[] {
  return gearLoad(plainLander({ force: LEG, ...shape }), MOON).cases.map(({ name }) => name);
}

describe('loads of an upright body by its legs', () => {
  it('[SU6] are ordered worst first', () => {
    // bending is as bad as a compression of 2 M / r: all four legs push 80 kN, one alone 20 kN and √2 b 20 kN m;
    // the hull's corners stand at r = √2, so that one alone is as bad as 20 (1 + 2 b) kN when it yields
    expect(namesOf({ halfStance: 0.5 })).toEqual(['all legs', 'one leg alone', 'at rest']);
    expect(namesOf({ halfStance: 3 })).toEqual(['one leg alone', 'all legs', 'at rest']);
    // and at rest 100 t weigh 162 kN, 60 t 97 kN
    expect(namesOf({ halfStance: 0.5, mass: 100_000 })).toEqual(['at rest', 'all legs', 'one leg alone']);
    expect(namesOf({ halfStance: 3, mass: 60_000 })).toEqual(['one leg alone', 'at rest', 'all legs']);
  });

  it('[SU6] are the crush force of all legs, of one with its arm, and the weight', () => {
    const lander = plainLander({ force: LEG, halfStance: 2, mass: 5000 });
    const cases = new Map(gearLoad(lander, MOON).cases.map((each) => [each.name, each]));
    const base = { shear: 0, momentAt: 0.9 };
    expect(cases.get('all legs')).toMatchObject({ ...base, compression: 4 * LEG, moment: 0, acceleration: 16 });
    expect(cases.get('one leg alone')).toMatchObject({ ...base, compression: LEG, acceleration: 4 });
    expect(cases.get('one leg alone')?.moment).toBeCloseTo(LEG * 2 * Math.SQRT2, 8);
    expect(cases.get('at rest')).toMatchObject({ ...base, compression: 5000 * MOON, moment: 0 });
    const { radius, wall, strength } = bodyTube(lander);
    expect(radius).toBeCloseTo(Math.SQRT2, 14);
    expect(wall).toBeCloseTo(Math.SQRT2 / 500, 14);
    expect(cases.get('all legs')?.yieldUse).toBeCloseTo((4 * LEG) / (2 * Math.PI * radius * wall) / strength, 12);
  });

  it('[SU6] have the larger of the two utilizations for their worst', () => {
    const stress = { axialStress: 0, shearStress: 0 };
    expect(worstUse({ ...stress, yieldUse: 0.3, bucklingUse: 0.5 })).toBe(0.5);
    expect(worstUse({ ...stress, yieldUse: 0.7, bucklingUse: 0.5 })).toBe(0.7);
  });
});
