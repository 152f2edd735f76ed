import { describe, expect, it } from 'vitest';
import { expectedValue } from '../../../client/panels/sourceExpected.ts';
import { viewOf } from '../../support/flightView.ts';

const THIN = '\u202f';
const LEVEL = { firstX: -200, spacing: 100, heights: [0, 0, 0, 0, 0] };
/** 3-4-5: the lander leans so that its axis is longer by five to four. */
const LEAN = Math.asin(0.6);

describe('what a source should read by what is believed', () => {
  it('is the range along the leaning axis: 20 m up, that is 25 m', () => {
    expect(expectedValue('altimeter', viewOf({ y: 20, angle: LEAN }), LEVEL)).toBe(`25.0${THIN}m`);
    expect(expectedValue('altimeter', viewOf({ y: 20, angle: 0 }), LEVEL)).toBe(`20.0${THIN}m`);
  });

  it('is the velocity in the axes of the leaning lander: straight down at 5 m/s, 3 of it are across', () => {
    const falling = viewOf({ vx: 0, vy: -5, angle: LEAN });
    expect(expectedValue('velocityRadar', falling, LEVEL)).toBe(`← 3.00, ↓ 4.00${THIN}m/s`);
    expect(expectedValue('surfaceCamera', falling, LEVEL)).toBe(`0.00${THIN}m/s`);
  });

  it('is nothing where no reading is held against it, or the axis meets no ground', () => {
    expect(expectedValue('inertialUnit', viewOf({}), LEVEL)).toBe('');
    expect(expectedValue('propellantGauge', viewOf({}), LEVEL)).toBe('');
    expect(expectedValue('altimeter', viewOf({ angle: Math.PI }), LEVEL)).toBe('');
  });
});
