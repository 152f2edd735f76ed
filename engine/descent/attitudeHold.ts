/**
 * Attitude hold: the torque that turns a rigid body to a commanded angle and stops it there.
 *
 * A proportional-derivative law with two limits that keep it from overshooting: the rate it asks for is never more than
 * half of the available torque can still brake within the angle that is left, and never more than MAX_TURN_RATE; the torque is
 * what the thrusters can give. Common practice.
 */

/** Fastest turn the hold asks for [rad/s]: 15 degrees a second, which a person can follow by eye. */
export const MAX_TURN_RATE = Math.PI / 12;

/** Rate asked for by each radian of error near the command [1/s]. */
const RATE_PER_ERROR = 1.5;

/** Time in which the rate is brought to the one asked for [s]. */
const RATE_TIME = 0.15;

/** What turns, and with which thrusters. */
interface TurningBody {
  /** About the turning axis [kg·m²]. */
  readonly inertia: number;
  /** [N·m] */
  readonly maxTorque: number;
}

/**
 * Torque that brings the body by the angle `error` (commanded less actual) while it turns at `rate` [N·m]. Both
 * counter-clockwise, [rad] and [rad/s]; the magnitude is at most `maxTorque`.
 */
export function holdTorque({ inertia, maxTorque }: TurningBody, error: number, rate: number): number {
  // v² = 2·a·s with half of the available angular acceleration
  const brakeable = Math.sqrt((maxTorque / inertia) * Math.abs(error));
  const most = Math.min(RATE_PER_ERROR * Math.abs(error), brakeable, MAX_TURN_RATE);
  const asked = error < 0 ? -most : most;
  const torque = (inertia * (asked - rate)) / RATE_TIME;
  return Math.max(-maxTorque, Math.min(maxTorque, torque));
}
