/**
 * First modes of liquid in a cylindrical tank that lies on its side.
 *
 * Across the axis (a circular canal): the mode makes the Rayleigh quotient of the linear free-surface problem least,
 *
 *   ω² / g = min  ∫ |∇φ|² dA / ∫_S φ² dx,   φ odd in x                  [Ibrahim2005] sec. 1.2 (variational form)
 *
 * φ is sought among harmonic polynomials, so the first integral runs along the boundary only. Their number is fixed; the
 * result is an upper bound that the tests compare with [McIver1989].
 *
 * The share of liquid that takes part follows from the force of the mode on the walls:
 *
 *   m₁ = ρ λ (∫_S x φ dx)² / ∫_S φ² dx  per length,   λ = ω²/g         [Ibrahim2005] ch. 5; gives SP-106's upright result too
 *
 * Along the axis: gravity waves in a canal of uniform section between two end walls, a half wave long,
 *
 *   ω² = g k tanh(k d),   k = π / L,   d = A / b                        [Lamb1932] art. 170, 228
 *
 * A, b  area and surface width of the section [m²], [m]. Exact for long and for short waves, within a few percent between.
 */
import { assert } from '../assert.ts';
import { acos, cos, sin, tanh } from '../math/index.ts';
import { integrateSmooth } from '../math/gaussLegendre.ts';
import { solveLinear } from '../math/linearSystem.ts';
import type { Tank } from '../lander/lander.ts';
import { liquidSection } from './lyingTank.ts';

interface SloshMode {
  /** [rad/s] */
  readonly frequency: number;
  /** Share of the liquid that takes part [-]; absent where the model does not say. */
  readonly massShare?: number;
}

/**
 * Harmonic polynomials tried. By comparison with more of them the eigenvalue is right to 1e-5 up to half full, to 4e-4 at
 * 7/8 of the depth and to 1 % at FULLEST; above, the corner under the wall would need another method.
 */
const TERMS = 14;
const ITERATIONS = 40;
/** Depth over radius above which no mode across is given [-]; little liquid takes part by then. */
export const FULLEST = 1.9;

/** Mode across the axis of a lying tank under an effective gravity [m/s²]; undefined above FULLEST. Fill above 0, below 1. */
export function sloshAcross(tank: Tank, fill: number, gravity: number): SloshMode | undefined {
  const { depth } = liquidSection(tank, fill);
  if (depth > FULLEST * tank.radius) return undefined;
  const { eigenvalue, massShare } = canalMode(depth / tank.radius);
  return { frequency: Math.sqrt((eigenvalue * gravity) / tank.radius), massShare };
}

/** Mode along the axis. */
export function sloshAlong(tank: Tank, fill: number, gravity: number): SloshMode {
  const { area, width } = liquidSection(tank, fill);
  const k = Math.PI / tank.length;
  return { frequency: Math.sqrt(gravity * k * tanh((k * area) / width)) };
}

/** ω² R / g and the share of liquid of the first odd mode of a canal of radius 1, filled to a depth of up to FULLEST. */
export function canalMode(depth: number): { readonly eigenvalue: number; readonly massShare: number } {
  assert(depth > 0 && depth <= FULLEST, `a canal of radius 1 has a depth above 0, up to ${FULLEST}, not ${depth}`);
  const canal = shapeOf(depth);
  const order = Array.from({ length: TERMS }, (_, i) => i + 1);
  const stiffness = order.map((i) => order.map((j) => symmetrized(canal, i, j)));
  const surface = order.map((i) =>
    order.map((j) => onSurface(canal, (x) => odd(canal, i, x, 0) * odd(canal, j, x, 0))),
  );
  let shape: readonly number[] = order.map((n) => (n === 1 ? 1 : 0));
  // inverse iteration: stiffness · next = surface · shape
  for (let step = 0; step < ITERATIONS; step++) {
    const next = solveLinear(stiffness, times(surface, shape));
    assert(next !== undefined, `the polynomials of a canal of depth ${depth} depend on each other`);
    const size = Math.max(...next.map((value) => Math.abs(value)));
    shape = next.map((value) => value / size);
  }
  const weight = dot(shape, times(surface, shape));
  const eigenvalue = dot(shape, times(stiffness, shape)) / weight;
  const lever = onSurface(
    canal,
    (x) => x * order.reduce((sum, n, i) => sum + (shape[i] ?? 0) * odd(canal, n, x, 0), 0),
  );
  return { eigenvalue, massShare: (eigenvalue * lever * lever) / weight / canal.area };
}

interface Canal {
  /** Of the surface above the middle of the circle, half its width, half the angle of the wetted arc, area; radius 1. */
  readonly level: number;
  readonly halfWidth: number;
  readonly halfAngle: number;
  readonly area: number;
  /** Length by which the polynomials are scaled. */
  readonly scale: number;
}

function shapeOf(depth: number): Canal {
  const level = depth - 1;
  const halfWidth = Math.sqrt(depth * (2 - depth));
  const halfAngle = acos(-level);
  return { level, halfWidth, halfAngle, area: halfAngle + level * halfWidth, scale: Math.max(halfWidth, depth) };
}

/** Mean of the two ways to write ∫ ∇φ_i · ∇φ_j, which differ by rounding only. */
function symmetrized(canal: Canal, i: number, j: number): number {
  return (alongBoundary(canal, i, j) + alongBoundary(canal, j, i)) / 2;
}

/** ∮ φ_i ∂φ_j/∂n ds over the wetted arc and the surface (Green's first identity, φ_j harmonic). */
function alongBoundary(canal: Canal, i: number, j: number): number {
  const { level, halfAngle } = canal;
  const arc = integrateSmooth(
    (angle) => {
      const x = sin(angle);
      const y = -cos(angle);
      const [gx, gy] = gradient(canal, j, x, y - level);
      return odd(canal, i, x, y - level) * (gx * x + gy * y);
    },
    -halfAngle,
    halfAngle,
  );
  return arc + onSurface(canal, (x) => odd(canal, i, x, 0) * gradient(canal, j, x, 0)[1]);
}

function onSurface({ halfWidth }: Canal, f: (x: number) => number): number {
  return integrateSmooth(f, -halfWidth, halfWidth);
}

/** The n-th harmonic polynomial that is odd in x: the real part of ζⁿ for odd n, the imaginary for even, ζ = (x + i y)/scale. */
function odd({ scale }: Canal, n: number, x: number, y: number): number {
  const [real, imaginary] = power(x / scale, y / scale, n);
  return n % 2 === 1 ? real : imaginary;
}

/** Its gradient, from dζⁿ/dζ = n ζⁿ⁻¹. */
function gradient({ scale }: Canal, n: number, x: number, y: number): readonly [number, number] {
  const [real, imaginary] = power(x / scale, y / scale, n - 1);
  const by = n / scale;
  return n % 2 === 1 ? [by * real, -by * imaginary] : [by * imaginary, by * real];
}

/** Real and imaginary part of (x + i y)ⁿ. */
function power(x: number, y: number, n: number): readonly [number, number] {
  let real = 1;
  let imaginary = 0;
  for (let k = 0; k < n; k++) {
    const next = real * x - imaginary * y;
    imaginary = real * y + imaginary * x;
    real = next;
  }
  return [real, imaginary];
}

function times(matrix: readonly (readonly number[])[], vector: readonly number[]): readonly number[] {
  return matrix.map((row) => dot(row, vector));
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}
