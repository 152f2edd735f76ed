import { describe, expect, it } from 'vitest';
import { bucklingStress, tubeSecondMoment, tubeSectionModulus, tubeUse } from '../../../engine/structure/thinTube.ts';

const TUBE = { radius: 1, wall: 0.002, modulus: 70e9, strength: 200e6 };
const NOTHING = { moment: 0, shear: 0, compression: 0 };

describe('a thin tube', () => {
  it('[SU4] has the section of the exact ring to the order of wall over radius squared', () => {
    const [outer, inner] = [1.001, 0.999];
    expect(tubeSecondMoment(TUBE) / ((Math.PI / 4) * (outer ** 4 - inner ** 4))).toBeCloseTo(1, 5);
    expect(tubeSectionModulus(TUBE)).toBeCloseTo(tubeSecondMoment(TUBE) / TUBE.radius, 15);
  });

  it('[SU4] carries a moment as M / W, a shear as 2 V / A, a thrust as N / A', () => {
    const area = 2 * Math.PI * 0.002;
    expect(tubeUse(TUBE, { ...NOTHING, moment: -5000 }).axialStress).toBeCloseTo(5000 / (Math.PI * 0.002), 6);
    expect(tubeUse(TUBE, { ...NOTHING, shear: 5000 }).shearStress).toBeCloseTo((2 * 5000) / area, 6);
    expect(tubeUse(TUBE, { ...NOTHING, compression: 5000 }).axialStress).toBeCloseTo(5000 / area, 6);
  });

  it('[SU4] is used up in full by the moment that brings the wall to its strength', () => {
    const moment = TUBE.strength * tubeSectionModulus(TUBE);
    expect(tubeUse(TUBE, { ...NOTHING, moment }).yieldUse).toBeCloseTo(1, 12);
    expect(tubeUse(TUBE, { ...NOTHING, moment }).bucklingUse).toBeGreaterThan(1);
  });

  it('[SU4] buckles at 0.605 E t / r less the reduction for imperfections, sooner in compression than in bending', () => {
    const classical = 0.605 * 70e9 * 0.002;
    const phi = Math.sqrt(500) / 16;
    const ratio = bucklingStress(TUBE, 'compression') / classical;
    // [SP8007]: γ = 1 − 0.901 (1 − e^−φ); 0.605 is rounded
    expect(ratio).toBeCloseTo(1 - 0.901 * (1 - Math.exp(-phi)), 3);
    expect(bucklingStress(TUBE, 'bending')).toBeGreaterThan(bucklingStress(TUBE, 'compression'));
    expect(bucklingStress({ ...TUBE, wall: 0.1 }, 'bending') / (0.605 * 70e9 * 0.1)).toBeGreaterThan(0.85);
  });

  it('refuses what is no thin tube', () => {
    for (const bad of [
      { wall: 0.2 },
      { wall: 0 },
      { radius: -1 },
      { radius: 4 },
      { modulus: 0 },
      { strength: Number.NaN },
    ])
      expect(() => tubeUse({ ...TUBE, ...bad }, NOTHING)).toThrow(/wall|modulus|radius/);
  });
});
