/**
 * Unit quaternions as attitudes: w first, and rotate(q, v) takes a vector of the body frame to the world frame.
 * Conventions and formulas: [Kuipers1999] ch. 5 and 7, right-handed, q and −q being the same attitude.
 */
import { cos, sin } from './trig.ts';
import { length3, type Vec3 } from './vec3.ts';

export type Quaternion = readonly [w: number, x: number, y: number, z: number];

/** Body axes along world axes. */
export const UPRIGHT: Quaternion = [1, 0, 0, 0];

/** Half-angles below this use sin(h)/h = 1 − h²/6: its next term, h⁴/120, is then below half an ulp [rad]. */
const SMALL_HALF_ANGLE = 1 / 4096;

/** a × b: the rotation b followed by the rotation a. */
export function multiply(a: Quaternion, b: Quaternion): Quaternion {
  const [aw, ax, ay, az] = a;
  const [bw, bx, by, bz] = b;
  return [
    aw * bw - ax * bx - ay * by - az * bz,
    aw * bx + ax * bw + ay * bz - az * by,
    aw * by - ax * bz + ay * bw + az * bx,
    aw * bz + ax * by - ay * bx + az * bw,
  ];
}

/** The opposite rotation. */
export function conjugate(q: Quaternion): Quaternion {
  return [q[0], -q[1], -q[2], -q[3]];
}

/** A vector of the body frame, in the world frame:  v + 2 w (u × v) + 2 u × (u × v), u the vector part of q. */
export function rotate(q: Quaternion, v: Vec3): Vec3 {
  const [w, x, y, z] = q;
  const tx = 2 * (y * v[2] - z * v[1]);
  const ty = 2 * (z * v[0] - x * v[2]);
  const tz = 2 * (x * v[1] - y * v[0]);
  return [v[0] + w * tx + (y * tz - z * ty), v[1] + w * ty + (z * tx - x * tz), v[2] + w * tz + (x * ty - y * tx)];
}

/** A vector of the world frame, in the body frame. */
export function rotateBack(q: Quaternion, v: Vec3): Vec3 {
  return rotate(conjugate(q), v);
}

/** Right-handed turn by an angle [rad] about a unit axis. */
export function fromAxisAngle(axis: Vec3, angle: number): Quaternion {
  const sine = sin(angle / 2);
  return [cos(angle / 2), axis[0] * sine, axis[1] * sine, axis[2] * sine];
}

/** Turn about the direction of a vector by its length [rad]; the zero vector gives no turn. */
export function fromRotationVector(turn: Vec3): Quaternion {
  const half = length3(turn) / 2;
  const sinc = half < SMALL_HALF_ANGLE ? 1 - (half * half) / 6 : sin(half) / half;
  const factor = sinc / 2;
  return [cos(half), turn[0] * factor, turn[1] * factor, turn[2] * factor];
}

/** Scaled to unit length; undefined when it has none. */
export function normalize(q: Quaternion): Quaternion | undefined {
  const [w, x, y, z] = q;
  const length = Math.sqrt(w * w + x * x + y * y + z * z);
  return length > 0 ? [w / length, x / length, y / length, z / length] : undefined;
}

/**
 * The attitude after a time [s] at an angular velocity given in the world frame [rad/s]: exact when it is constant,
 * and of unit length to rounding. For a rate in the body frame: multiply(q, fromRotationVector(rate × time)).
 */
export function integrate(q: Quaternion, rateWorld: Vec3, time: number): Quaternion {
  const turn = fromRotationVector([rateWorld[0] * time, rateWorld[1] * time, rateWorld[2] * time]);
  const [w, x, y, z] = multiply(turn, q);
  // one Newton step to unit length: the drift of a step is of the order of rounding, so this takes all of it
  const correction = 1.5 - 0.5 * (w * w + x * x + y * y + z * z);
  return [w * correction, x * correction, y * correction, z * correction];
}
