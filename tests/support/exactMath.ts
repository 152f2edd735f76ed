/**
 * Elementary functions in whole-number arithmetic of 256 binary places and more, as the reference for engine/math.
 *
 * Only + − × ÷ and square root of whole numbers, by series whose remainder is below the last place, so the platform's own
 * functions take no part. tests/unit/support/exactMath.test.ts checks them against published digits and identities.
 */

/** A number as mantissa / 2^places. */
export interface Exact {
  readonly mantissa: bigint;
  readonly places: number;
}

const PLACES = 256;
const BITS = BigInt(PLACES);
const ONE = 1n << BITS;

/** The value of a double, without loss. */
export function exactOf(x: number): Exact {
  if (!Number.isFinite(x)) throw new RangeError(`no exact value of ${x}`);
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  const bits = view.getBigUint64(0);
  const field = Number((bits >> 52n) & 0x7ffn);
  const fraction = bits & ((1n << 52n) - 1n);
  const magnitude = field === 0 ? fraction : fraction | (1n << 52n);
  return { mantissa: bits >> 63n === 1n ? -magnitude : magnitude, places: 1075 - Math.max(1, field) };
}

/** Distance between neighboring doubles of that size, as a power of two. */
function ulpExponent(x: Exact): number {
  const size = (x.mantissa < 0n ? -x.mantissa : x.mantissa).toString(2).length;
  return Math.max(-1074, size - 1 - x.places - 52);
}

/** |computed − exact| in units in the last place of the exact value. */
export function ulpError(computed: number, exact: Exact): number {
  const own = exactOf(computed);
  const places = Math.max(own.places, exact.places);
  const a = own.mantissa << BigInt(places - own.places);
  const b = exact.mantissa << BigInt(places - exact.places);
  const difference = a > b ? a - b : b - a;
  // difference / 2^(places + ulp exponent), to 20 binary places
  const shift = BigInt(places + ulpExponent(exact) - 20);
  return Number(shift >= 0n ? difference >> shift : difference << -shift) / 1048576;
}

/** Decimal digits, cut off after so many places. */
export function formatExact(x: Exact, digits: number): string {
  const negative = x.mantissa < 0n;
  const scaled = ((negative ? -x.mantissa : x.mantissa) * 10n ** BigInt(digits)) >> BigInt(x.places);
  const text = scaled.toString().padStart(digits + 1, '0');
  return `${negative ? '-' : ''}${text.slice(0, -digits)}.${text.slice(-digits)}`;
}

/** The nearest double, for printing and for values whose last place does not matter. */
export function nearestDouble(x: Exact): number {
  const drop = Math.max(0, (x.mantissa < 0n ? -x.mantissa : x.mantissa).toString(2).length - 60);
  return Number(x.mantissa >> BigInt(drop)) * 2 ** (drop - x.places);
}

/** To PLACES binary places; exact for doubles of 2^-150 and more. */
function fixed(x: number): bigint {
  const { mantissa, places } = exactOf(x);
  return places <= PLACES ? mantissa << BigInt(PLACES - places) : mantissa >> BigInt(places - PLACES);
}

function multiply(a: bigint, b: bigint): bigint {
  return (a * b) >> BITS;
}

function divide(a: bigint, b: bigint): bigint {
  return (a << BITS) / b;
}

function squareRoot(a: bigint): bigint {
  const target = a << BITS;
  if (target === 0n) return 0n;
  let root = 1n << BigInt((target.toString(2).length + 1) >> 1);
  for (;;) {
    const next = (root + target / root) >> 1n;
    if (next >= root) return root;
    root = next;
  }
}

/** atan(1/n) by its Taylor series. */
function atanOfInverse(n: bigint): bigint {
  let power = ONE / n;
  let sum = power;
  for (let k = 1n; power !== 0n; k++) {
    power /= n * n;
    sum += k % 2n === 1n ? -power / (2n * k + 1n) : power / (2n * k + 1n);
  }
  return sum;
}

/** Machin 1706: π = 16 atan(1/5) − 4 atan(1/239). */
const PI = 16n * atanOfInverse(5n) - 4n * atanOfInverse(239n);
/** ln 2 = 2 atanh(1/3). */
const LN2 = logOfRatio(ONE / 3n);

export const exactPi: Exact = { mantissa: PI, places: PLACES };
export const exactLn2: Exact = { mantissa: LN2, places: PLACES };

/** 2 atanh s = ln((1 + s)/(1 − s)). */
function logOfRatio(s: bigint): bigint {
  const square = multiply(s, s);
  let power = s;
  let sum = s;
  for (let k = 3n; power !== 0n && power !== -1n; k += 2n) {
    power = multiply(power, square);
    sum += power / k;
  }
  return 2n * sum;
}

/** Sum of first, first × ratio / (a (a + 1)), … the alternating series of sine and cosine. */
function alternating(first: bigint, square: bigint, start: bigint): bigint {
  let term = first;
  let sum = first;
  for (let k = start; term !== 0n && term !== -1n; k += 2n) {
    term = -multiply(term, square) / (k * (k + 1n));
    sum += term;
  }
  return sum;
}

function sineAndCosine(x: number): readonly [bigint, bigint] {
  const angle = fixed(x);
  const quarter = PI / 2n;
  // whole quarter turns, rounded to nearest
  const doubled = 2n * angle + quarter;
  const turns = doubled >= 0n ? doubled / (2n * quarter) : -((2n * quarter - 1n - doubled) / (2n * quarter));
  const rest = angle - turns * quarter;
  const square = multiply(rest, rest);
  const sine = alternating(rest, square, 2n);
  const cosine = alternating(ONE, square, 1n);
  const quadrant = ((turns % 4n) + 4n) % 4n;
  if (quadrant === 0n) return [sine, cosine];
  if (quadrant === 1n) return [cosine, -sine];
  if (quadrant === 2n) return [-sine, -cosine];
  return [-cosine, sine];
}

function atanFixed(x: bigint): bigint {
  // halve the angle: atan x = 2 atan(x / (1 + √(1 + x²)))
  let halved = x;
  const halvings = 8n;
  for (let i = 0n; i < halvings; i++) halved = divide(halved, ONE + squareRoot(ONE + multiply(halved, halved)));
  const square = multiply(halved, halved);
  let power = halved;
  let sum = halved;
  for (let k = 1n; power !== 0n && power !== -1n; k++) {
    power = -multiply(power, square);
    sum += power / (2n * k + 1n);
  }
  return sum << halvings;
}

/** e^x as mantissa times a power of two. */
function expFixed(x: number): readonly [mantissa: bigint, power: number] {
  const value = fixed(x);
  const doubled = 2n * value + LN2;
  const n = doubled >= 0n ? doubled / (2n * LN2) : -((2n * LN2 - 1n - doubled) / (2n * LN2));
  const rest = value - n * LN2;
  let term = ONE;
  let sum = ONE;
  for (let k = 1n; term !== 0n && term !== -1n; k++) {
    term = multiply(term, rest) / k;
    sum += term;
  }
  return [sum, Number(n)];
}

const asExact = (mantissa: bigint): Exact => ({ mantissa, places: PLACES });

export const exactSin = (x: number): Exact => asExact(sineAndCosine(x)[0]);
export const exactCos = (x: number): Exact => asExact(sineAndCosine(x)[1]);
export function exactTan(x: number): Exact {
  const [sine, cosine] = sineAndCosine(x);
  return asExact(divide(sine, cosine));
}
export const exactAtan = (x: number): Exact => asExact(atanFixed(fixed(x)));
export const exactAsin = (x: number): Exact => {
  const s = fixed(x);
  const other = squareRoot(ONE - multiply(s, s));
  if (other === 0n) return asExact(s < 0n ? -PI / 2n : PI / 2n);
  return asExact(atanFixed(divide(s, other)));
};
/** 2 atan √((1 − x)/(1 + x)). */
export const exactAcos = (x: number): Exact => {
  const c = fixed(x);
  return c === -ONE ? exactPi : asExact(2n * atanFixed(squareRoot(divide(ONE - c, ONE + c))));
};
export function exactAtan2(y: number, x: number): Exact {
  const [a, b] = [exactOf(y), exactOf(x)];
  if (b.mantissa === 0n) return asExact(a.mantissa < 0n ? -PI / 2n : PI / 2n);
  const shift = BITS + BigInt(b.places - a.places);
  const ratio = shift >= 0n ? (a.mantissa << shift) / b.mantissa : a.mantissa / (b.mantissa << -shift);
  const angle = atanFixed(ratio);
  if (b.mantissa > 0n) return asExact(angle);
  return asExact(a.mantissa < 0n ? angle - PI : angle + PI);
}
export function exactExp(x: number): Exact {
  const [mantissa, power] = expFixed(x);
  return { mantissa, places: PLACES - power };
}
export function exactLog(x: number): Exact {
  const { mantissa, places } = exactOf(x);
  // x = 2^(size − places) × unit, unit in [1, 2), so that ln 1 is 0 exactly
  const size = mantissa.toString(2).length - 1;
  const unit = mantissa << BigInt(PLACES - size);
  return asExact(logOfRatio(divide(unit - ONE, unit + ONE)) + BigInt(size - places) * LN2);
}
/** (e^2x − 1)/(e^2x + 1), for |x| ≤ 40. */
export function exactTanh(x: number): Exact {
  const [mantissa, power] = expFixed(2 * x);
  const squared = power >= 0 ? mantissa << BigInt(power) : mantissa >> BigInt(-power);
  return asExact(divide(squared - ONE, squared + ONE));
}
export function exactHypot(x: number, y: number): Exact {
  const [a, b] = [exactOf(x), exactOf(y)];
  const places = Math.max(a.places, b.places);
  const u = a.mantissa << BigInt(places - a.places);
  const v = b.mantissa << BigInt(places - b.places);
  // √(u² + v²) to 256 more places
  return { mantissa: squareRoot((u * u + v * v) << BITS), places: places + PLACES };
}
