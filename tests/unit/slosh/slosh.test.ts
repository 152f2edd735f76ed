import { describe, expect, it } from 'vitest';
import type { Tank } from '../../../engine/lander/index.ts';
import { centerShift, lateralMode, liquidShift, uprightShift } from '../../../engine/slosh/index.ts';

const UPRIGHT: Tank = {
  name: 'oxidizer',
  orientation: 'upright',
  radius: 0.8,
  length: 2,
  bottomHeight: 1,
  offset: [0, 0],
  fill: 0.5,
  density: 1000,
};
const LYING: Tank = { ...UPRIGHT, name: 'fuel', orientation: 'lying' };

describe('the first lateral mode', () => {
  it('[SL1] depends on the effective acceleration in its frequency alone, by the square root', () => {
    const [moon, earth] = [1.62, 9.81].map((g) => lateralMode({ radius: 0.7, depth: 0.4 }, g));
    if (moon === undefined || earth === undefined) throw new Error('two modes');
    expect(earth.frequency / moon.frequency).toBeCloseTo(Math.sqrt(9.81 / 1.62), 14);
    expect({ ...earth, frequency: 0 }).toEqual({ ...moon, frequency: 0 });
  });

  it('[SL1] of shallow liquid takes nearly all mass along, of deep liquid little, and has wave speed √(g h)', () => {
    const shallow = lateralMode({ radius: 1, depth: 1e-3 }, 9.81);
    // m1/m tends to 2/(ξ² − 1) = 0.8368, ω to ξ √(g h)/R
    expect(shallow.massRatio).toBeCloseTo(0.8368, 3);
    expect(shallow.frequency).toBeCloseTo(1.8411838 * Math.sqrt(9.81e-3), 5);
    const deep = lateralMode({ radius: 1, depth: 50 }, 9.81);
    expect(deep.massRatio).toBeLessThan(0.01);
    expect(deep.pendulumLength).toBeCloseTo(1 / 1.8411838, 7);
    // the hinge lies a pendulum length below the surface: h − 2/ξ + 1/ξ
    expect(50 - deep.hingeHeight).toBeCloseTo(1 / 1.8411838, 7);
  });

  it.each([
    [{ radius: 0, depth: 1 }, 1, /radius and depth are above 0/],
    [{ radius: 1, depth: NaN }, 1, /radius and depth are above 0/],
    [{ radius: 1, depth: 1 }, 0, /effective acceleration is above 0/],
  ])('[SL1] refuses %o at %d m/s²', (column, acceleration, message) => {
    expect(() => lateralMode(column, acceleration)).toThrow(message);
  });
});

describe('the shift of the liquid in a tank', () => {
  it('[SL4] is none without tilt, whatever the fill', () => {
    for (const depth of [1e-12, 0.5, 2])
      expect(uprightShift({ radius: 1, length: 2, depth }, 0)).toEqual({ lateral: 0, axial: 0, surface: 'wall only' });
  });

  it('[SL5] passes over into each regime without a jump', () => {
    // the surface meets the bottom at tan β = h/R, the top at (H − h)/R
    for (const [depth, slope] of [
      [0.2, 0.2],
      [1.7, 0.3],
    ] as const) {
      const [before, after] = [1 - 1e-9, 1 + 1e-9].map((share) =>
        uprightShift({ radius: 1, length: 2, depth }, Math.atan(share * slope)),
      );
      if (before === undefined || after === undefined) throw new Error('two shifts');
      expect(before.surface).toBe('wall only');
      expect(after.surface).not.toBe('wall only');
      expect(Math.abs(after.lateral - before.lateral)).toBeLessThan(1e-8);
      expect(Math.abs(after.axial - before.axial)).toBeLessThan(1e-8);
    }
  });

  it('[SL5] puts a film of liquid into the low corner and does not move a full tank', () => {
    expect(uprightShift({ radius: 1, length: 2, depth: 1e-11 }, -0.3)).toMatchObject({
      lateral: -1,
      surface: 'bottom',
    });
    expect(uprightShift({ radius: 1, length: 2, depth: 1e-7 }, 0.3).lateral).toBeGreaterThan(0.99);
    expect(uprightShift({ radius: 1, length: 2, depth: 2 }, 0.3)).toEqual({ lateral: 0, axial: 0, surface: 'top' });
  });

  it('[SL7] of a lander is the mass-weighted mean over its tanks', () => {
    const tilt = 0.1;
    const liquid = 1000 * Math.PI * 0.64;
    expect(liquidShift(UPRIGHT, tilt)).toEqual({
      x: uprightShift({ radius: 0.8, length: 2, depth: 1 }, tilt).lateral,
      z: uprightShift({ radius: 0.8, length: 2, depth: 1 }, tilt).axial,
    });
    const lying = liquidShift(LYING, tilt);
    expect(lying.x).toBeCloseTo(((4 * 0.8) / (3 * Math.PI)) * Math.sin(tilt), 12);
    const both = centerShift([UPRIGHT, LYING, { ...UPRIGHT, fill: 0 }], 5 * liquid, tilt);
    expect(both.x).toBeCloseTo((liquidShift(UPRIGHT, tilt).x + lying.x) / 5, 12);
    expect(both.z).toBeCloseTo((liquidShift(UPRIGHT, tilt).z + lying.z) / 5, 12);
    expect(centerShift([], 100, tilt)).toEqual({ x: 0, z: 0 });
  });

  it.each([
    ['no liquid', () => uprightShift({ radius: 1, length: 2, depth: 0 }, 0.1), /there is liquid/],
    [
      'more than the tank holds',
      () => uprightShift({ radius: 1, length: 2, depth: 2.1 }, 0.1),
      /no more than the tank/,
    ],
    ['no radius', () => uprightShift({ radius: NaN, length: 2, depth: 1 }, 0.1), /radius and length/],
    ['a quarter turn', () => uprightShift({ radius: 1, length: 2, depth: 1 }, Math.PI / 2), /between -90 and 90/],
    ['a body without mass', () => centerShift([UPRIGHT], 0, 0.1), /mass of the body is above 0/],
  ])('[SL4] refuses %s', (_name, call, message) => {
    expect(call).toThrow(message);
  });
});
