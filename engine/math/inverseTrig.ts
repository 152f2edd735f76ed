/**
 * Inverse sine, cosine and tangent that give the same bits on every JavaScript engine; see trig.ts for why.
 *
 * Method: argument reduction and minimax coefficients published with [Ng1995] s_atan.c, e_asin.c, e_acos.c, e_atan2.c.
 * Only + − × ÷, Math.abs, Math.sqrt and Math.fround, all fixed to the bit by IEEE 754.
 */
import { assert } from '../assert.ts';

/** What is lost when π/2 and π are rounded to a double [rad]. */
const HALF_PI_LOW = 6.12323399573676603587e-17;
const PI_LOW = 2 * HALF_PI_LOW;
/** Below this arcsine and arctangent are their argument to the last bit. */
const TINY = 1 / 134217728;

/** Arctangent [rad], in [−π/2, π/2], of any number but NaN. Error below 1 ulp (largest seen 0.83). */
export function atan(tangent: number): number {
  const t = Math.abs(tangent);
  assert(t >= 0, 'atan needs a number, got NaN');
  if (t < TINY) return tangent;
  const angle = atanOfPositive(t);
  return tangent < 0 ? -angle : angle;
}

/** Reduces to |x| < 7/16 with atan t = atan c + atan((t − c)/(1 + c t)), c = 1/2, 1, 3/2, ∞. */
function atanOfPositive(t: number): number {
  if (t < 7 / 16) return t - atanDeficit(t);
  if (t < 11 / 16) return atanFrom(4.63647609000806093515e-1, 2.26987774529616870924e-17, (2 * t - 1) / (2 + t));
  if (t < 19 / 16) return atanFrom(7.85398163397448278999e-1, 3.06161699786838301793e-17, (t - 1) / (t + 1));
  if (t < 39 / 16) return atanFrom(9.82793723247329054082e-1, 1.39033110312309984516e-17, (t - 1.5) / (1 + 1.5 * t));
  return atanFrom(Math.PI / 2, HALF_PI_LOW, -1 / t);
}

/** (high + low) + atan x, high + low being the arctangent of the reduction point. */
function atanFrom(high: number, low: number, x: number): number {
  return high - (atanDeficit(x) - low - x);
}

/** x − atan x for |x| ≤ 7/16. Coefficients aT[0] to aT[10] of [Ng1995] s_atan.c. */
function atanDeficit(x: number): number {
  const z = x * x;
  const w = z * z;
  const odd =
    z *
    (3.33333333333329318027e-1 +
      w *
        (1.42857142725034663711e-1 +
          w *
            (9.09088713343650656196e-2 +
              w * (6.66107313738753120669e-2 + w * (4.97687799461593236017e-2 + w * 1.62858201153657823623e-2)))));
  const even =
    w *
    (-1.99999999998764832476e-1 +
      w *
        (-1.1111110405462355788e-1 +
          w * (-7.69187620504482999495e-2 + w * (-5.83357013379057348645e-2 + w * -3.6531572744216915527e-2))));
  return x * (odd + even);
}

/** Angle of the point (x, y) from the positive x axis [rad], in [−π, π]; both finite. Error below 2 ulp (largest seen 1.37). */
export function atan2(y: number, x: number): number {
  if (!(Number.isFinite(y) && Number.isFinite(x))) assert(false, `atan2 needs finite numbers, got ${y} and ${x}`);
  if (y === 0) return isNegative(x) ? (isNegative(y) ? -Math.PI : Math.PI) : y;
  if (x === 0) return y < 0 ? -Math.PI / 2 : Math.PI / 2;
  const ratio = Math.abs(y / x);
  const acute = ratio < TINY ? ratio : atanOfPositive(ratio);
  const angle = x > 0 ? acute : Math.PI - (acute - PI_LOW);
  return y < 0 ? -angle : angle;
}

/** True of −0 too. */
function isNegative(x: number): boolean {
  return x < 0 || Object.is(x, -0);
}

/** Arcsine [rad], in [−π/2, π/2], of a sine in [−1, 1]. Error below 1 ulp (largest seen 0.82). */
export function asin(sine: number): number {
  const s = Math.abs(sine);
  if (!(s <= 1)) assert(false, `asin needs a number from -1 to 1, got ${sine}`);
  if (s < 0.5) return sine + sine * asinExcess(sine * sine);
  // π/2 − 2 asin √((1 − s)/2), taken as π/4 − (small − (π/4 − 2 head)) so that the difference of the large terms is exact
  const z = (1 - s) * 0.5;
  const root = Math.sqrt(z);
  const head = Math.fround(root);
  const small = 2 * root * asinExcess(z) - (HALF_PI_LOW - 2 * rootTail(z, root, head));
  const angle = Math.PI / 4 - (small - (Math.PI / 4 - 2 * head));
  return sine < 0 ? -angle : angle;
}

/** Arccosine [rad], in [0, π], of a cosine in [−1, 1]. Error below 1 ulp (largest seen 0.87). */
export function acos(cosine: number): number {
  const c = Math.abs(cosine);
  if (!(c <= 1)) assert(false, `acos needs a number from -1 to 1, got ${cosine}`);
  if (c < 0.5) return Math.PI / 2 - (cosine - (HALF_PI_LOW - cosine * asinExcess(cosine * cosine)));
  // acos c = 2 asin √((1 − c)/2)
  const z = (1 - c) * 0.5;
  const root = Math.sqrt(z);
  if (cosine < 0) return Math.PI - 2 * (root + (root * asinExcess(z) - HALF_PI_LOW));
  const head = Math.fround(root);
  return 2 * (head + (root * asinExcess(z) + rootTail(z, root, head)));
}

/** √z − head, where root is √z rounded and head its leading 24 bits, whose square is exact. */
function rootTail(z: number, root: number, head: number): number {
  return z === 0 ? 0 : (z - head * head) / (root + head);
}

/** asin(x)/x − 1 as a function of z = x², z ≤ 1/4. Coefficients pS0 to qS4 of [Ng1995] e_asin.c. */
function asinExcess(z: number): number {
  const p =
    z *
    (1.66666666666666657415e-1 +
      z *
        (-3.25565818622400915405e-1 +
          z *
            (2.01212532134862925881e-1 +
              z * (-4.00555345006794114027e-2 + z * (7.91534994289814532176e-4 + z * 3.4793310759602116757e-5)))));
  const q =
    1 +
    z *
      (-2.40339491173441421878 +
        z * (2.02094576023350569471 + z * (-6.8828397160545329303e-1 + z * 7.70381505559019352791e-2)));
  return p / q;
}
