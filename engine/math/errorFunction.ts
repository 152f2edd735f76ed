/**
 * Complementary error function, the same bits on every JavaScript engine; see trig.ts for why.
 *
 * Method and coefficients: [Ng1995] s_erf.c, rational approximations on five ranges of |x|.
 */
import { assert } from '../assert.ts';
import { exp } from './exponential.ts';

/** erf(1) to 24 bits, about which the second range is expanded. [Ng1995] s_erf.c, erx */
const ERF_OF_ONE = 8.45062911510467529297e-1;
/** Beyond this erfc underflows, and erfc(−x) rounds to 2. */
const LARGEST = 28;

const BELOW_084 = {
  p: [
    1.28379167095512558561e-1, -3.2504210724700149937e-1, -2.84817495755985104766e-2, -5.77027029648944159157e-3,
    -2.37630166566501626084e-5,
  ],
  q: [
    1, 3.97917223959155352819e-1, 6.50222499887672944485e-2, 5.08130628187576562776e-3, 1.32494738004321644526e-4,
    -3.9602282787753681232e-6,
  ],
};
const BELOW_125 = {
  p: [
    -2.36211856075265944077e-3, 4.14856118683748331666e-1, -3.72207876035701323847e-1, 3.18346619901161753674e-1,
    -1.10894694282396677476e-1, 3.54783043256182359371e-2, -2.166375594868790843e-3,
  ],
  q: [
    1, 1.06420880400844228286e-1, 5.40397917702171048937e-1, 7.18286544141962662868e-2, 1.26171219808761642112e-1,
    1.36370839120290507362e-2, 1.1984499846799107417e-2,
  ],
};
const BELOW_286 = {
  p: [
    -9.86494403484714822705e-3, -6.93858572707181764372e-1, -1.05586262253232909814e1, -6.23753324503260060396e1,
    -1.62396669462573470355e2, -1.84605092906711035994e2, -8.12874355063065934246e1, -9.81432934416914548592,
  ],
  q: [
    1, 1.96512716674392571292e1, 1.376577541435190426e2, 4.34565877475229228821e2, 6.45387271733267880336e2,
    4.29008140027567833386e2, 1.08635005541779435134e2, 6.57024977031928170135, -6.04244152148580987438e-2,
  ],
};
const BELOW_28 = {
  p: [
    -9.86494292470009928597e-3, -7.99283237680523006574e-1, -1.77579549177547519889e1, -1.60636384855821916062e2,
    -6.37566443368389627722e2, -1.02509513161107724954e3, -4.83519191608651397019e2,
  ],
  q: [
    1, 3.03380607434824582924e1, 3.25792512996573918826e2, 1.53672958608443695994e3, 3.19985821950859553908e3,
    2.55305040643316442583e3, 4.74528541206955367215e2, -2.24409524465858183362e1,
  ],
};

/** erfc(x) = 1 − erf(x) of any number but NaN, in [0, 2]. Relative error below 2 ulp while the result is normal. */
export function erfc(x: number): number {
  const a = Math.abs(x);
  assert(a >= 0, 'erfc needs a number, got NaN');
  if (a < 27 / 32) return erfcNearZero(x);
  if (a < 1.25) {
    const excess = ratio(BELOW_125, a - 1);
    return x > 0 ? 1 - ERF_OF_ONE - excess : 1 + (ERF_OF_ONE + excess);
  }
  if (a >= LARGEST) return x > 0 ? 0 : 2;
  const tail = erfcOfTail(a);
  return x > 0 ? tail : 2 - tail;
}

function erfcNearZero(x: number): number {
  const y = ratio(BELOW_084, x * x);
  return x < 0.25 ? 1 - (x + x * y) : 0.5 - (x - 0.5 + x * y);
}

/** e^(−a²) f(1/a²) / a, the square split so that its leading part is exact. */
function erfcOfTail(a: number): number {
  const fraction = ratio(a < 1 / 0.35 ? BELOW_286 : BELOW_28, 1 / (a * a));
  const head = Math.fround(a);
  return (exp(-head * head - 0.5625) * exp((head - a) * (head + a) + fraction)) / a;
}

function ratio(pair: { readonly p: readonly number[]; readonly q: readonly number[] }, x: number): number {
  return polynomial(pair.p, x) / polynomial(pair.q, x);
}

/** c_0 + c_1 x + c_2 x² + …, by Horner's rule. */
export function polynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) value = value * x + (coefficients[i] ?? 0);
  return value;
}
