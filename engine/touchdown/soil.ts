import { exp, log } from '../math/exponential.ts';

/** Force agrees with the law to this share [-]. */
const FORCE_SHARE = 1e-12;
const MAX_TURNS = 60;

/** Force that a pad has to exceed to sink further, at a permanent sinkage [N]: B = coefficient p^exponent. */
export function bekkerForce(coefficient: number, exponent: number, sinkage: number): number {
  if (sinkage <= 0) return 0;
  return exponent === 1 ? coefficient * sinkage : coefficient * exp(exponent * log(sinkage));
}

/**
 * Coefficient of Bekker's pressure-sinkage law for one round pad [N/m^exponent].
 *
 *   p = (k_c / b + k_phi) z^n,   force = p A                                    [LSB1991] sec. 9.1, after Bekker
 *
 * b  the smaller width of the loaded area: the radius of a round plate [m]; z is taken as the permanent sinkage, the elastic part (force /
 * stiffness) coming on top.
 */
export function bekkerCoefficient(cohesive: number, frictional: number, diameter: number): number {
  const area = (Math.PI / 4) * diameter * diameter;
  return (cohesive / (diameter / 2) + frictional) * area;
}

/**
 * Further sinkage dp of a pad under a trial force above its bearing force: force - k dp = coefficient (p + dp)^exponent.
 * Closed form for exponents 0 (coefficient is the strength) and 1; else false position in a sure bracket.
 */
export function furtherSinkage(
  force: number,
  stiffness: number,
  coefficient: number,
  exponent: number,
  sinkage: number,
): number {
  if (exponent === 0) return (force - coefficient) / stiffness;
  if (exponent === 1) return (force - coefficient * sinkage) / (stiffness + coefficient);
  let low = 0;
  let over = force - bekkerForce(coefficient, exponent, sinkage);
  let high = force / stiffness;
  let under = -bekkerForce(coefficient, exponent, sinkage + high);
  let side = 0;
  let dp = high;
  for (let turn = 0; turn < MAX_TURNS; turn++) {
    dp = (low * under - high * over) / (under - over);
    const miss = force - stiffness * dp - bekkerForce(coefficient, exponent, sinkage + dp);
    if (Math.abs(miss) <= FORCE_SHARE * force) return dp;
    if (miss > 0) {
      low = dp;
      over = miss;
      if (side === 1) under /= 2;
      side = 1;
    } else {
      high = dp;
      under = miss;
      if (side === -1) over /= 2;
      side = -1;
    }
  }
  return dp;
}

/**
 * Permanent sinkage of a round pad under a force that is put on slowly [m]: force = coefficient p^exponent.
 */
export function bekkerSinkage(
  force: number,
  diameter: number,
  soil: { readonly cohesive: number; readonly frictional: number; readonly exponent: number },
): number {
  return sinkageUnder(force, bekkerCoefficient(soil.cohesive, soil.frictional, diameter), soil.exponent);
}

function sinkageUnder(force: number, coefficient: number, exponent: number): number {
  const ratio = force / coefficient;
  return exponent === 1 ? ratio : exp(log(ratio) / exponent);
}

/**
 * By how much the work of a load on a pad that sinks as far as the load can bring it exceeds what the soil takes [J].
 *
 *   integral of load - C p^n from p_0 to p = load (p - p_0) - (load p - B_0 p_0) / (n + 1),   C p^n = load, B_0 = C p_0^n
 */
export function workBeyondSoil(load: number, coefficient: number, exponent: number, sinkage: number): number {
  const end = sinkageUnder(load, coefficient, exponent);
  const start = bekkerForce(coefficient, exponent, sinkage);
  return load * (end - sinkage) - (load * end - start * sinkage) / (exponent + 1);
}
