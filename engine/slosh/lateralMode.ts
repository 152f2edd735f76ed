import { assert } from '../assert.ts';
import { tanh } from '../math/index.ts';

/** Liquid at rest in an upright cylinder with a flat bottom. */
interface LiquidColumn {
  /** Inner radius of the tank [m]. */
  readonly radius: number;
  /** Height of the level surface above the bottom [m]. */
  readonly depth: number;
}

/** The first lateral mode as a pendulum that acts on the tank at its hinge. */
interface LateralMode {
  /** Natural frequency [rad/s]. */
  readonly frequency: number;
  /** Share of the liquid that swings [-], 0 to 1. */
  readonly massRatio: number;
  /** [m] */
  readonly pendulumLength: number;
  /** Above the bottom of the tank [m]. */
  readonly hingeHeight: number;
}

/**
 * First root of J1′(ξ) = 0, J1 the Bessel function of order 1 [-]. [Abramowitz1964] table 9.5 (from memory); that it is
 * the root is a test.
 */
export const FIRST_LATERAL_ROOT = 1.8411837813406593;

/**
 * First lateral mode of an ideal liquid with a free surface in an upright cylinder.
 *
 *   ω² = (ξ g/R) tanh(ξ h/R)                              frequency            [Abramson1966] ch. 2 and 6
 *   m1/m = 2 tanh(ξ h/R) / ((ξ h/R)(ξ² − 1))              share that swings
 *   L1 = g/ω² = R / (ξ tanh(ξ h/R))                       pendulum length
 *   z = h − (2 R/ξ) tanh(ξ h/2R) + L1                     hinge above the bottom
 *
 * ξ  FIRST_LATERAL_ROOT [-]    R  radius [m]    h  depth [m]    g  effective acceleration along the axis [m/s²]
 *
 * g is what a body resting in the tank would feel: gravity on the ground, thrust over mass in powered flight. Only the
 * frequency depends on it. Valid for small waves, no damping, a tank that is not closed near the surface.
 *
 * The hinge, derived: pressure p ~ J1(ξ r/R) cos θ cosh(k z), k = ξ/R. On the wall it gives the force sinh(kh)/k and the
 * moment h sinh(kh)/k − (cosh(kh) − 1)/k² about the bottom, both times π R J1(ξ); on the bottom the moment 1/k², since
 * ∫ r² J1(kr) dr = R J1(ξ)/k² at J1′(ξ) = 0. Moment over force: z = h − (cosh(kh) − 2)/(k sinh(kh)), which is the line
 * above. The pendulum's mass then hangs at h − (2/k) tanh(kh/2), where a mass on a spring would be.
 */
export function lateralMode({ radius, depth }: LiquidColumn, acceleration: number): LateralMode {
  assert(radius > 0 && depth > 0 && radius < Infinity && depth < Infinity, 'radius and depth are above 0');
  assert(acceleration > 0 && acceleration < Infinity, 'the effective acceleration is above 0');
  const waveNumber = FIRST_LATERAL_ROOT / radius;
  const fullness = waveNumber * depth;
  const whole = tanh(fullness);
  const pendulumLength = 1 / (waveNumber * whole);
  return {
    frequency: Math.sqrt(acceleration / pendulumLength),
    massRatio: (2 * whole) / (fullness * (FIRST_LATERAL_ROOT * FIRST_LATERAL_ROOT - 1)),
    pendulumLength,
    hingeHeight: depth - (2 / waveNumber) * tanh(fullness / 2) + pendulumLength,
  };
}
