import { describe, expect, it } from 'vitest';
import { about, clock, decimal, degrees, distance, percent, speed } from '../../../client/text/numbers.ts';

/** The narrow no-break space between figure and unit. */
const THIN = '\u202f';

describe('numbers on the table', () => {
  it('carry a true minus and never a negative zero', () => {
    expect(decimal(-1.25, 1)).toBe('−1.3');
    expect(decimal(-0.04, 1)).toBe('0.0');
  });

  it('always show their unit', () => {
    expect(distance(14.24)).toBe(`14.2${THIN}m`);
    expect(distance(120.4)).toBe(`120${THIN}m`);
    expect(speed(0.666)).toBe(`0.67${THIN}m/s`);
    expect(percent(0.853)).toBe(`85${THIN}%`);
    expect(degrees(Math.PI / 8)).toBe('22.5°');
  });

  it('count minutes and seconds', () => {
    expect(clock(112.9)).toBe('01:52');
    expect(clock(-3)).toBe('00:00');
  });

  it('are rounded to what is known of them', () => {
    expect(about(9.94, 20.8)).toBe('10 ± 21\u202fm');
  });
});
