import { assert } from '../assert.ts';
import { cos, exp, sin } from '../math/index.ts';
import { FIRST_LATERAL_ROOT } from './lateralMode.ts';

/** How the liquid of a tank hangs in it: the pendulum of its first lateral mode. Counter-clockwise positive; the tank's own frame. */
export interface Swing {
  /** From the tank's axis [rad]. */
  readonly angle: number;
  /** [rad/s] */
  readonly rate: number;
}

export const AT_REST: Swing = { angle: 0, rate: 0 };

/** A pendulum in a body that turns and is pushed. */
interface HungPendulum {
  /** [m] */
  readonly length: number;
  /** Of its hinge above the body's center of mass, along the axis [m]. */
  readonly hingeAbove: number;
  /** Share of the critical damping [-], from 0 to under 1. */
  readonly damping: number;
}

/** What the body feels over one step: as an inertial unit at its center of mass measures it. */
export interface FeltMotion {
  /** Specific force, to the body's right and to its nose; `along` is above 0 [m/s²]. */
  readonly across: number;
  readonly along: number;
  /** By how much the body's rate changes in it, counter-clockwise [rad/s]. */
  readonly rateChange: number;
}

/** Of a tank with baffles, round: ours. Smooth walls alone take about 0.1 % of critical at these sizes ([Abramson1966] ch. 4, from memory). */
export const BAFFLED_DAMPING = 0.03;

/**
 * The swing after a step, of small angles.
 *
 *   φ¨ + 2 ζ ω φ˙ + ω² (φ − φe) = −(1 − d/L) α           ω² = f_y/L,   φe = −f_x/f_y
 *
 * φ  angle [rad]    L  length [m]    d  hinge above the center of mass [m]    α  angular acceleration of the body [rad/s²]
 * f_x, f_y  specific force across and along [m/s²]    ζ  damping [-]
 *
 * Derivation: a point mass on a rod under the specific force at its hinge, f + α × d, seen from the turning body; terms of second order
 * (the centrifugal one among them) are left out. Method: half of the body's change of rate as a kick, the damped swing between the two
 * in closed form, the other half: second order in the step, and exact where the body does not turn.
 */
export function stepSwing(swing: Swing, pendulum: HungPendulum, felt: FeltMotion, step: number): Swing {
  const { length, hingeAbove, damping } = pendulum;
  const { across, along, rateChange } = felt;
  assert(length > 0 && damping >= 0 && damping < 1, 'a pendulum has a length, and swings');
  assert(along > 0, 'something pushes the liquid to its bottom');
  const kick = (-(1 - hingeAbove / length) * rateChange) / 2;
  const hangs = -across / along;
  const frequency = Math.sqrt(along / length);
  const decay = damping * frequency;
  const ringing = frequency * Math.sqrt(1 - damping * damping);
  const left = exp(-decay * step);
  const [c, s] = [cos(ringing * step), sin(ringing * step) / ringing];
  const away = swing.angle - hangs;
  const rate = swing.rate + kick;
  return {
    angle: hangs + left * (away * c + (rate + decay * away) * s),
    rate: left * (rate * c - (decay * rate + frequency * frequency * away) * s) + kick,
  };
}

/** How far it swings to either side of where it would hang, if it were left alone and not damped [rad]. */
export function swingSize({ angle, rate }: Swing, length: number, { across, along }: FeltMotion): number {
  const away = angle + across / along;
  return Math.sqrt(away * away + (rate * rate * length) / along);
}

/**
 * By how much the surface stands higher at the wall than level, for the mode alone [m].
 *
 *   η = 2 R φ / (ξ² − 1)
 *
 * R  radius [m]    φ  angle of the pendulum [rad]    ξ  FIRST_LATERAL_ROOT [-]
 *
 * Derivation: the moment of the mode's surface, ρ η π R³/ξ² (by ∫ r² J1(kr) dr as for the hinge), is that of the pendulum's mass, m1 L φ.
 */
export function riseAtWall(radius: number, angle: number): number {
  return (2 * radius * angle) / (FIRST_LATERAL_ROOT * FIRST_LATERAL_ROOT - 1);
}
