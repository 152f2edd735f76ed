import { describe, expect, it } from 'vitest';
import { exp, hypot2, log, tanh } from '../../../engine/math/exponential.ts';
import { acos, asin, atan, atan2, cos, MAX_ANGLE, sin, tan } from '../../../engine/math/trig.ts';
import { exactOf, exactPi } from '../../support/exactMath.ts';

/** Significant bits of a double. */
function bits(x: number): number {
  return exactOf(x).mantissa.toString(2).replace(/0+$/, '').length;
}

/** sum − π/2, over 2^-256. */
function shortfall(parts: readonly number[]): number {
  const sum = parts
    .map(exactOf)
    .reduce((total, { mantissa, places }) => total + (mantissa << BigInt(256 - places)), 0n);
  return Number(sum - exactPi.mantissa / 2n) * 2 ** -256;
}

describe('the three parts of π/2', () => {
  // the literals of engine/math/trig.ts
  const [first, second, third] = [1.57079632673412561417, 6.0771005063039659766e-11, 2.02226624879595063154e-21];
  const [thirdHead, thirdTail] = [2.0222662487111664558e-21, 8.47842766036889956997e-32];

  it('[MA1] have 33 bits each where they are multiplied by a whole number', () => {
    expect([first, second, thirdHead].map((part) => bits(part) <= 33)).toEqual([true, true, true]);
  });

  it('[MA1] add up to π/2 within the last bit of the last part', () => {
    expect(Math.abs(shortfall([first, second, third]))).toBeLessThan(third * 2 ** -53);
    expect(Math.abs(shortfall([first, second, thirdHead, thirdTail]))).toBeLessThan(thirdTail * 2 ** -53);
  });
});

describe('special arguments', () => {
  it('[MA3] keep the sign of zero', () => {
    for (const f of [sin, tan, asin, atan, tanh]) expect([f(0), f(-0)]).toEqual([0, -0]);
    expect([atan2(0, 1), atan2(-0, 1), atan2(0, -1), atan2(-0, -1)]).toEqual([0, -0, Math.PI, -Math.PI]);
    expect([atan2(0, 0), atan2(0, -0), atan2(-0, 0), atan2(-0, -0)]).toEqual([0, Math.PI, -0, -Math.PI]);
  });

  it('[MA3] give exact values where there are any', () => {
    expect([cos(0), exp(0), log(1), acos(1), hypot2(3, 4), hypot2(0, -5)]).toEqual([1, 1, 0, 0, 5, 5]);
    expect([asin(1), asin(-1), acos(-1), acos(0), atan(Infinity)]).toEqual([
      Math.PI / 2,
      -Math.PI / 2,
      Math.PI,
      Math.PI / 2,
      Math.PI / 2,
    ]);
    expect([atan2(2, 0), atan2(-2, 0), atan2(1e308, 1e-308), atan2(1, -Number.MAX_VALUE)]).toEqual([
      Math.PI / 2,
      -Math.PI / 2,
      Math.PI / 2,
      Math.PI,
    ]);
    expect([tanh(30), tanh(-1e300), exp(-746)]).toEqual([1, -1, 0]);
  });

  it('[MA3] neither overflow nor underflow on the way to a length', () => {
    expect(hypot2(3e300, 4e300)).toBe(5e300);
    expect(hypot2(3e-310, 4e-310)).toBe(5e-310);
    expect(hypot2(5e-324, 0)).toBe(5e-324);
  });

  it('[MA3] are identities of the smallest doubles', () => {
    for (const f of [sin, tan, asin, atan, tanh]) expect([f(5e-324), f(-2e-310)]).toEqual([5e-324, -2e-310]);
  });

  it.each([
    ['sin', () => sin(MAX_ANGLE), /sin needs an angle within ±1600000 rad, got 1600000/],
    ['cos', () => cos(NaN), /cos needs an angle .* got NaN/],
    ['tan', () => tan(-Infinity), /got -Infinity/],
    ['asin', () => asin(1 + 2 ** -52), /asin needs a number from -1 to 1, got 1.0000000000000002/],
    ['acos', () => acos(NaN), /acos needs a number from -1 to 1, got NaN/],
    ['atan', () => atan(NaN), /atan needs a number, got NaN/],
    ['atan2', () => atan2(Infinity, 1), /atan2 needs finite numbers, got Infinity and 1/],
    ['exp', () => exp(710), /exp needs a number up to 709\.78\d+, got 710/],
    ['log', () => log(0), /log needs a positive finite number, got 0/],
    ['tanh', () => tanh(NaN), /tanh needs a number, got NaN/],
    ['hypot2', () => hypot2(1, NaN), /hypot2 needs finite numbers, got 1 and NaN/],
  ])('[MA3] outside the range of %s are refused by name', (_name, call, message) => {
    expect(call).toThrow(message);
  });
});
