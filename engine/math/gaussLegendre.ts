/** Integrals of smooth functions over an interval. */
import { cos } from './trig.ts';

/** Exact for polynomials up to degree 2 × POINTS − 1. */
const POINTS = 32;
const RULE = gaussLegendreRule(POINTS);

/** Integral of f from a to b by Gauss-Legendre quadrature of 32 points [Press2007] sec. 4.6. For functions without kinks. */
export function integrateSmooth(f: (x: number) => number, a: number, b: number): number {
  const middle = (a + b) / 2;
  const half = (b - a) / 2;
  let sum = 0;
  for (const { node, weight } of RULE) sum += weight * f(middle + half * node);
  return sum * half;
}

/** Nodes and weights on [−1, 1]: zeros of the Legendre polynomial, by Newton's method from their asymptotic places. */
export function gaussLegendreRule(points: number): readonly { readonly node: number; readonly weight: number }[] {
  return Array.from({ length: points }, (_, i) => {
    let node = cos((Math.PI * (i + 0.75)) / (points + 0.5));
    let slope = 1;
    for (let step = 0; step < 10; step++) {
      const { value, derivative } = legendre(points, node);
      node -= value / derivative;
      slope = derivative;
    }
    return { node, weight: 2 / ((1 - node * node) * slope * slope) };
  });
}

/** P_n and its derivative, by the three-term recurrence. */
function legendre(n: number, x: number): { readonly value: number; readonly derivative: number } {
  let before = 1;
  let value = x;
  for (let k = 2; k <= n; k++) {
    const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
    before = value;
    value = next;
  }
  return { value, derivative: (n * (x * value - before)) / (x * x - 1) };
}
