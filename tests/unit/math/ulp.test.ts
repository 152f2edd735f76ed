import { describe, expect, it } from 'vitest';
import { exp, hypot2, log, tanh } from '../../../engine/math/exponential.ts';
import { nextUniform, seedRandom, type RandomState } from '../../../engine/math/random.ts';
import { acos, asin, atan, atan2, cos, MAX_ANGLE, sin, tan } from '../../../engine/math/trig.ts';
import {
  exactAcos,
  exactAsin,
  exactAtan,
  exactAtan2,
  exactCos,
  exactExp,
  exactHypot,
  exactLog,
  exactSin,
  exactTan,
  exactTanh,
  ulpError,
  type Exact,
} from '../../support/exactMath.ts';

const SAMPLES = 2000;

/** Draws arguments from low to high, evenly. */
function between(low: number, high: number): (random: RandomState) => number {
  return (random) => low + nextUniform(random) * (high - low);
}

/** 1 and other points approached from one side, down to the last place. */
function closeTo(point: number, side: number): (random: RandomState) => number {
  return (random) => point + side * Math.pow(2, -53 * nextUniform(random));
}

/** Spread evenly over the magnitudes from 2^low to 2^high. */
function magnitudes(low: number, high: number): (random: RandomState) => number {
  return (random) => Math.pow(2, low + nextUniform(random) * (high - low));
}

interface Claim {
  readonly name: string;
  readonly ours: (x: number) => number;
  readonly exact: (x: number) => Exact;
  /** As stated in the doc comment of the function [ulp]. */
  readonly bound: number;
  readonly draws: readonly ((random: RandomState) => number)[];
}

const angles = [
  between(-Math.PI / 4, Math.PI / 4),
  between(-7, 7),
  between(-1000, 1000),
  between(-MAX_ANGLE, MAX_ANGLE),
  magnitudes(-140, 0),
];

const CLAIMS: readonly Claim[] = [
  { name: 'sin', ours: sin, exact: exactSin, bound: 1, draws: angles },
  { name: 'cos', ours: cos, exact: exactCos, bound: 1, draws: angles },
  { name: 'tan', ours: tan, exact: exactTan, bound: 3, draws: angles },
  {
    name: 'asin',
    ours: asin,
    exact: exactAsin,
    bound: 1,
    draws: [between(-1, 1), closeTo(1, -1), closeTo(-1, 1), magnitudes(-140, -1)],
  },
  {
    name: 'acos',
    ours: acos,
    exact: exactAcos,
    bound: 1,
    draws: [between(-1, 1), closeTo(1, -1), closeTo(-1, 1), magnitudes(-140, -1)],
  },
  {
    name: 'atan',
    ours: atan,
    exact: exactAtan,
    bound: 1,
    draws: [between(-1, 1), between(-4, 4), magnitudes(-140, 140)],
  },
  {
    name: 'exp',
    ours: exp,
    exact: exactExp,
    bound: 1,
    draws: [between(-1, 1), between(-708, 709.7), between(-745.1, -708), magnitudes(-140, 0)],
  },
  {
    name: 'log',
    ours: log,
    exact: exactLog,
    bound: 1,
    draws: [between(0, 4), closeTo(1, 1), closeTo(1, -1), magnitudes(-1074, 1023.9)],
  },
  {
    name: 'tanh',
    ours: tanh,
    exact: exactTanh,
    bound: 2,
    draws: [between(-0.625, 0.625), between(0.6, 1.2), between(-25, 25), magnitudes(-140, 0)],
  },
];

describe('elementary functions against rational arithmetic', () => {
  it.each(CLAIMS)('[MA1] $name errs by less than $bound ulp, as it states', ({ ours, exact, bound, draws }) => {
    const random = seedRandom(20);
    let worst = { error: 0, at: 0 };
    for (const draw of draws) {
      for (let i = 0; i < SAMPLES; i++) {
        const x = draw(random);
        const error = ulpError(ours(x), exact(x));
        if (error > worst.error) worst = { error, at: x };
      }
    }
    // above 0.5: the samples reached arguments at which rounding was hard
    expect(worst.error, `worst at ${worst.at}`).toBeGreaterThan(0.5);
    expect(worst.error, `worst at ${worst.at}`).toBeLessThan(bound);
  });

  it.each([
    { name: 'atan2', ours: atan2, exact: exactAtan2, bound: 2 },
    { name: 'hypot2', ours: hypot2, exact: exactHypot, bound: 1.5 },
  ])('[MA1] $name errs by less than $bound ulp, as it states', ({ ours, exact, bound }) => {
    const random = seedRandom(21);
    let worst = { error: 0, at: [0, 0] };
    for (let i = 0; i < 4 * SAMPLES; i++) {
      const scale = Math.pow(2, 80 * (nextUniform(random) - 0.5));
      const a = scale * (2 * nextUniform(random) - 1);
      const b = (i % 2 === 0 ? scale : 1) * (2 * nextUniform(random) - 1);
      const error = ulpError(ours(a, b), exact(a, b));
      if (error > worst.error) worst = { error, at: [a, b] };
    }
    expect(worst.error, `worst at ${worst.at.join(', ')}`).toBeGreaterThan(0.5);
    expect(worst.error, `worst at ${worst.at.join(', ')}`).toBeLessThan(bound);
  });

  it('[MA1] keeps the stated error at the doubles that lie nearest to a quarter turn', () => {
    // our own sine and cosine only choose the arguments; the reference judges them
    const nearest: { readonly angle: number; readonly distance: number }[] = [];
    for (let n = 1; n * (Math.PI / 2) < MAX_ANGLE; n++) {
      const angle = n * (Math.PI / 2);
      const distance = Math.min(Math.abs(sin(angle)), Math.abs(cos(angle)));
      if (distance < 1e-13) nearest.push({ angle, distance });
    }
    nearest.sort((a, b) => a.distance - b.distance);
    expect(nearest.length).toBeGreaterThan(500);
    expect(nearest[0]?.distance).toBeLessThan(1e-18);
    let [worst, worstTangent] = [0, 0];
    for (const { angle } of nearest.slice(0, 500)) {
      worst = Math.max(worst, ulpError(sin(angle), exactSin(angle)), ulpError(cos(angle), exactCos(angle)));
      worstTangent = Math.max(worstTangent, ulpError(tan(angle), exactTan(angle)));
    }
    expect(worst).toBeLessThan(1);
    expect(worstTangent).toBeLessThan(3);
  });
});
