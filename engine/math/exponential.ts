/**
 * Exponential, logarithm, hyperbolic tangent and length of a pair, the same bits on every JavaScript engine; see
 * trig.ts for why. Only + − × ÷, Math.abs, Math.floor, Math.sqrt, Math.max and Math.min.
 *
 * Method and coefficients of exp and log: [Ng1995] e_exp.c, e_log.c. Of tanh: [Moshier1989] tanh.c.
 */
import { assert } from '../assert.ts';

/** ln 2 as 32 bits, so that a whole number of up to 20 bits times it is exact, and the rest. [Ng1995] e_exp.c */
const LN2_HEAD = 6.9314718036912381649e-1;
const LN2_TAIL = 1.90821492927058770002e-10;
const LOG2_E = 1.442695040888963387;
/** ln of the largest double: beyond it the exponential is no number. */
const LARGEST_EXPONENT = 709.782712893384;
/** ln of half the smallest double: below it the exponential rounds to 0. */
const SMALLEST_EXPONENT = -745.1332191019412;

/** Below this the hyperbolic tangent is its argument to the last bit, sign of zero included. */
const TINY = 1 / 268435456;

const LOWEST_POWER = -1074;
const POWERS_OF_TWO = powersOfTwo();

/** e to the x, x ≤ 709.78. Error below 1 ulp (largest seen 0.89). */
export function exp(x: number): number {
  if (!(x <= LARGEST_EXPONENT)) assert(false, `exp needs a number up to ${LARGEST_EXPONENT}, got ${x}`);
  if (x < SMALLEST_EXPONENT) return 0;
  // x = n ln 2 + r, |r| ≤ ln 2 / 2; the product with the head is exact
  const n = Math.floor(x * LOG2_E + 0.5);
  const head = x - n * LN2_HEAD;
  const tail = n * LN2_TAIL;
  const r = head - tail;
  const t = r * r;
  const c =
    r -
    t *
      (1.66666666666666019037e-1 +
        t *
          (-2.77777777770155933842e-3 +
            t * (6.61375632143793436117e-5 + t * (-1.6533902205465251539e-6 + t * 4.13813679705723846039e-8))));
  const mantissa = 1 - (tail - (r * c) / (2 - c) - head);
  // in two halves, so that neither power leaves the normal range and only the second product rounds
  const half = Math.floor(n / 2);
  return mantissa * powerOfTwo(half) * powerOfTwo(n - half);
}

/** Natural logarithm of a positive finite number. Error below 1 ulp (largest seen 0.76). */
export function log(x: number): number {
  if (!(x > 0 && x < Infinity)) assert(false, `log needs a positive finite number, got ${x}`);
  const n = exponentOf(x);
  // x = 2^n (1 + f), and log(1 + f) from s = f / (2 + f)
  const f = x * powerOfTwo(-Math.floor(n / 2)) * powerOfTwo(Math.floor(n / 2) - n) - 1;
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const even = w * (3.999999999940941908e-1 + w * (2.222219843214978396e-1 + w * 1.531383769920937332e-1));
  const odd =
    z *
    (6.66666666666673513e-1 +
      w * (2.857142874366239149e-1 + w * (1.818357216161805012e-1 + w * 1.479819860511658591e-1)));
  const halfSquare = 0.5 * f * f;
  return n * LN2_HEAD - (halfSquare - (s * (halfSquare + odd + even) + n * LN2_TAIL) - f);
}

/** Hyperbolic tangent of any number but NaN. Error below 2 ulp (largest seen 1.26). */
export function tanh(x: number): number {
  const a = Math.abs(x);
  assert(a >= 0, 'tanh needs a number, got NaN');
  // from 20 on the nearest double is 1
  if (a >= 0.625) {
    const positive = 1 - 2 / (exp(2 * Math.min(a, 20)) + 1);
    return x < 0 ? -positive : positive;
  }
  if (a < TINY) return x;
  const z = x * x;
  const p = (-0.9643991794250523 * z - 99.28772310019185) * z - 1614.6876844170845;
  const q = ((z + 112.81167849163293) * z + 2235.4883906010045) * z + 4844.063053251255;
  return x + x * z * (p / q);
}

/** √(x² + y²) of finite numbers without overflow or underflow on the way. Error below 1.5 ulp (largest seen 1.13). */
export function hypot2(x: number, y: number): number {
  const a = Math.max(Math.abs(x), Math.abs(y));
  const b = Math.min(Math.abs(x), Math.abs(y));
  if (!(a < Infinity)) assert(false, `hypot2 needs finite numbers, got ${x} and ${y}`);
  if (a === 0) return 0;
  if (a < powerOfTwo(500) && a > powerOfTwo(-450)) return Math.sqrt(a * a + b * b);
  // scale by a power of two, which is exact
  const up = a < 1 ? powerOfTwo(600) : powerOfTwo(-600);
  const down = a < 1 ? powerOfTwo(-600) : powerOfTwo(600);
  return Math.sqrt(a * up * (a * up) + b * up * (b * up)) * down;
}

/** The whole number n for which x / 2^n lies in [1/√2, √2). */
function exponentOf(x: number): number {
  const isUsual = x >= powerOfTwo(-32) && x < powerOfTwo(32);
  let low = isUsual ? -32 : LOWEST_POWER;
  let high = isUsual ? 32 : 1024;
  // largest n with 2^n ≤ x
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (powerOfTwo(middle) <= x) low = middle;
    else high = middle;
  }
  const half = Math.floor(low / 2);
  return x * powerOfTwo(-half) * powerOfTwo(half - low) < Math.SQRT2 ? low : low + 1;
}

function powerOfTwo(n: number): number {
  const power = POWERS_OF_TWO[n - LOWEST_POWER];
  if (power === undefined) assert(false, `2^${n} is no double`);
  return power;
}

/** Every power of two that is a double, by doubling, which is exact. */
function powersOfTwo(): Float64Array {
  const powers = new Float64Array(1023 - LOWEST_POWER + 1);
  let power = Number.MIN_VALUE;
  for (let i = 0; i < powers.length; i++) {
    powers[i] = power;
    power *= 2;
  }
  return powers;
}
