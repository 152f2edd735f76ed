import { describe, expect, it } from 'vitest';
import {
  exactAcos,
  exactAsin,
  exactAtan,
  exactAtan2,
  exactCos,
  exactExp,
  exactHypot,
  exactLn2,
  exactLog,
  exactOf,
  exactPi,
  exactSin,
  exactTan,
  exactTanh,
  formatExact,
  nearestDouble,
  ulpError,
  type Exact,
} from '../../support/exactMath.ts';

// Digits as found in any handbook of functions, for example Abramowitz & Stegun 1964, table 1.1 (from memory).
const PUBLISHED: readonly (readonly [name: string, value: Exact, digits: string])[] = [
  ['π', exactPi, '3.14159265358979323846264338327950288419716939937510'],
  ['ln 2', exactLn2, '0.69314718055994530941723212145817656807550013436025'],
  ['e', exactExp(1), '2.71828182845904523536028747135266249775724709369995'],
  ['ln 10', exactLog(10), '2.30258509299404568401799145468436420760110148862877'],
  ['sin 1', exactSin(1), '0.84147098480789650665250232163029899962256306079837'],
  ['cos 1', exactCos(1), '0.54030230586813971740093660744297660373231042061792'],
  ['tan 1', exactTan(1), '1.55740772465490223050697480745836017308725077238152'],
  ['tanh 1', exactTanh(1), '0.76159415595576488811945828260479359041276859725793'],
  ['√2', exactHypot(1, 1), '1.41421356237309504880168872420969807856967187537694'],
];

describe('the reference arithmetic', () => {
  it.each(PUBLISHED)('gives the published digits of %s', (_name, value, digits) => {
    expect(formatExact(value, 48)).toBe(digits.slice(0, -2));
  });

  it('agrees with itself where angles are known multiples of π', () => {
    const sixth = formatExact({ mantissa: exactPi.mantissa / 6n, places: exactPi.places }, 60);
    expect(formatExact(exactAsin(0.5), 60)).toBe(sixth);
    expect(formatExact({ ...exactAcos(0.5), mantissa: exactAcos(0.5).mantissa / 2n }, 60)).toBe(sixth);
    const quarter = formatExact({ mantissa: exactPi.mantissa / 4n, places: exactPi.places }, 60);
    expect(formatExact(exactAtan(1), 60)).toBe(quarter);
    const threeQuarters = { mantissa: (exactPi.mantissa * 3n) / 4n, places: exactPi.places };
    expect(formatExact(exactAtan2(2, -2), 60)).toBe(formatExact(threeQuarters, 60));
    expect(formatExact(exactAtan2(-2, -2), 60)).toBe(`-${formatExact(threeQuarters, 60)}`);
  });

  it('undoes the exponential with the logarithm', () => {
    for (const x of [-300, -1, 0.001, 2.5, 700]) {
      const power = nearestDouble(exactExp(x));
      expect(nearestDouble(exactLog(power)) / x).toBeCloseTo(1, 12);
    }
    expect(exactLog(1).mantissa).toBe(0n);
  });

  it('reads doubles without loss and measures errors in units in the last place', () => {
    for (const x of [1, -0.1, 1e300, 5e-324, 123456.789]) expect(nearestDouble(exactOf(x))).toBe(x);
    expect(ulpError(1, exactOf(1))).toBe(0);
    expect(ulpError(1 + 2 ** -52, exactOf(1))).toBe(1);
    expect(ulpError(8 - 3 * 2 ** -50, exactOf(4))).toBeGreaterThan(1e15);
    expect(ulpError(1e-323, exactOf(5e-324))).toBe(1);
    // π rounded to a double is off by 1.2246e-16, and its last place is 4.4409e-16
    expect(ulpError(Math.PI, exactPi)).toBeCloseTo(1.2246467991473532e-16 / 2 ** -51, 5);
  });
});
