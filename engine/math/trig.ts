/**
 * Sine, cosine and tangent that give the same bits on every JavaScript engine.
 *
 * The platform's own are implementation-approximated (ECMA-262, "Function Properties of the Math Object") and do differ
 * in the last bit between engines. These use only + − × ÷, Math.abs and Math.floor, which IEEE 754 fixes to the bit.
 *
 * Method: Cody-Waite reduction by π/2, π/2 being given in three parts of which the first two have 33 bits, so that their
 * products with a whole number below 2^20 are exact [CodyWaite1980]; then the odd and even minimax polynomials on
 * [−π/4, π/4] published with [Ng1995], k_sin.c and k_cos.c, with the second word of the reduced angle carried along.
 * Scalars stay local on purpose: module-level doubles would be boxed and cost twice the time.
 */
import { assert } from '../assert.ts';

export { acos, asin, atan, atan2 } from './inverseTrig.ts';

/** Angles must be smaller than this in magnitude [rad]; 2^20 quarter turns is where the exact products end. */
export const MAX_ANGLE = 1.6e6;

const TWO_OVER_PI = 2 / Math.PI;
/** Leading 33 bits of π/2, the next 33 bits, and the rest to 53 bits. [Ng1995] e_rem_pio2.c */
const HALF_PI_1 = 1.57079632673412561417;
const HALF_PI_2 = 6.0771005063039659766e-11;
const HALF_PI_3 = 2.02226624879595063154e-21;
/** HALF_PI_3 again as 33 bits and the rest, for angles so near a quarter turn that little else is left. */
const HALF_PI_3_HEAD = 2.0222662487111664558e-21;
const HALF_PI_3_TAIL = 8.47842766036889956997e-32;
/** Nearer to a quarter turn than this, the long reduction is used [rad]. Above the largest n × HALF_PI_2, 6.2e-5. */
const NEAR_QUARTER_TURN = 1 / 1024;

/** Sine of an angle [rad], |angle| < MAX_ANGLE. Error below 1 ulp (largest seen 0.78). */
export function sin(angle: number): number {
  if (Math.abs(angle) <= Math.PI / 4) return kernelSin(angle, 0);
  if (!(Math.abs(angle) < MAX_ANGLE)) refuseAngle('sin', angle);
  return sineOfReduced(angle, 0);
}

/** Cosine of an angle [rad], |angle| < MAX_ANGLE. Error below 1 ulp (largest seen 0.76). */
export function cos(angle: number): number {
  if (Math.abs(angle) <= Math.PI / 4) return kernelCos(angle, 0);
  if (!(Math.abs(angle) < MAX_ANGLE)) refuseAngle('cos', angle);
  return sineOfReduced(angle, 1);
}

/** Tangent of an angle [rad], |angle| < MAX_ANGLE, as sine over cosine. Error below 3 ulp (largest seen 2.06). */
export function tan(angle: number): number {
  return sin(angle) / cos(angle);
}

/** sin(angle + quarters × π/2) for an angle beyond ±π/4, without rounding the sum. */
function sineOfReduced(angle: number, quarters: number): number {
  const n = Math.floor(angle * TWO_OVER_PI + 0.5);
  // both products are exact, and so is the first difference (Sterbenz)
  const rest = angle - n * HALF_PI_1;
  const second = n * HALF_PI_2;
  if (Math.abs(rest) < NEAR_QUARTER_TURN) return sineNearQuarterTurn(rest, n, quarters);
  const head = rest - second;
  const low = rest - head - second - n * HALF_PI_3;
  const reduced = head + low;
  return sineInQuadrant(reduced, head - reduced + low, n + quarters);
}

/** The long reduction: every difference is taken together with its rounding error. */
function sineNearQuarterTurn(rest: number, n: number, quarters: number): number {
  const second = n * HALF_PI_2;
  const head = rest - second;
  const headError = differenceError(rest, second, head);
  const third = n * HALF_PI_3_HEAD;
  const next = head - third;
  const low = differenceError(head, third, next) + headError - n * HALF_PI_3_TAIL;
  const reduced = next + low;
  return sineInQuadrant(reduced, next - reduced + low, n + quarters);
}

/** Exact error of the rounded difference: (a − b) − difference. [Knuth1997] sec. 4.2.2, theorem B */
function differenceError(a: number, b: number, difference: number): number {
  const virtualB = a - difference;
  return a - (difference + virtualB) + (virtualB - b);
}

function sineInQuadrant(reduced: number, low: number, quarters: number): number {
  const quadrant = quarters & 3;
  if (quadrant === 0) return kernelSin(reduced, low);
  if (quadrant === 1) return kernelCos(reduced, low);
  if (quadrant === 2) return -kernelSin(reduced, low);
  return -kernelCos(reduced, low);
}

/** sin(x + y) for |x| ≤ π/4 and y the rounding error of x. Coefficients S1 to S6 of [Ng1995] k_sin.c. */
function kernelSin(x: number, y: number): number {
  const z = x * x;
  const v = z * x;
  const r =
    8.33333333332248946124e-3 +
    z *
      (-1.98412698298579493134e-4 +
        z * (2.75573137070700676789e-6 + z * (-2.50507602534068634195e-8 + z * 1.58969099521155010221e-10)));
  return x - (z * (0.5 * y - v * r) - y - v * -1.66666666666666324348e-1);
}

/** cos(x + y) for |x| ≤ π/4 and y the rounding error of x. Coefficients C1 to C6 of [Ng1995] k_cos.c. */
function kernelCos(x: number, y: number): number {
  const z = x * x;
  const w = z * z;
  const r =
    z * (4.16666666666666019037e-2 + z * (-1.38888888888741095749e-3 + z * 2.48015872894767294178e-5)) +
    w * w * (-2.75573143513906633035e-7 + z * (2.0875723212981748279e-9 + z * -1.13596475577881948265e-11));
  const half = 0.5 * z;
  const head = 1 - half;
  return head + (1 - head - half + (z * r - x * y));
}

function refuseAngle(name: string, angle: number): void {
  assert(false, `${name} needs an angle within ±${MAX_ANGLE} rad, got ${angle}`);
}
