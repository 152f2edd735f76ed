import { hypot2 } from '../math/exponential.ts';
import { multiply, fromAxisAngle, type Quaternion } from '../math/quaternion.ts';
import { atan2 } from '../math/trig.ts';
import type { Vec3 } from '../math/vec3.ts';

/** Body to world: yaw about the vertical, then pitch about the lander's y, then roll about its x [rad]. */
export function attitudeOf(yaw: number, pitch: number, roll: number): Quaternion {
  const turned = multiply(fromAxisAngle([0, 0, 1], yaw), fromAxisAngle([0, 1, 0], pitch));
  return multiply(turned, fromAxisAngle([1, 0, 0], roll));
}

/**
 * The angles of `attitudeOf` that give an attitude: pitch from -90 to 90 deg, yaw and roll from -180 to 180 deg [rad].
 *
 *   w + y = (c + s) cos((yaw - roll)/2)     z - x = (c + s) sin((yaw - roll)/2)     c, s cosine and sine of pitch/2
 *   w - y = (c - s) cos((yaw + roll)/2)     x + z = (c - s) sin((yaw + roll)/2)     product of the three turns
 *
 * Of half sum and half difference, so that no digit is lost with the nose on the horizon, where only one of them counts.
 */
export function anglesOf([w, x, y, z]: Quaternion): {
  readonly yaw: number;
  readonly pitch: number;
  readonly roll: number;
} {
  const halfDifference = atan2(z - x, w + y);
  const halfSum = atan2(x + z, w - y);
  return {
    yaw: withinTurn(halfSum + halfDifference),
    pitch: 2 * atan2(hypot2(w + y, z - x), hypot2(w - y, x + z)) - Math.PI / 2,
    roll: withinTurn(halfSum - halfDifference),
  };
}

function withinTurn(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

/**
 * Quaternion of the frame whose axes, as rows in the outer frame, are given: it takes a vector of that frame to the outer one.
 * The largest of the four components is found first, so that nothing cancels.                       [Shepperd1978]
 */
export function quaternionOf(x: Vec3, y: Vec3, z: Vec3): Quaternion {
  // columns of the rotation matrix are the axes
  const trace = x[0] + y[1] + z[2];
  if (trace >= x[0] && trace >= y[1] && trace >= z[2]) {
    const w = Math.sqrt(1 + trace) / 2;
    return [w, (y[2] - z[1]) / (4 * w), (z[0] - x[2]) / (4 * w), (x[1] - y[0]) / (4 * w)];
  }
  if (x[0] >= y[1] && x[0] >= z[2]) {
    const i = Math.sqrt(1 + 2 * x[0] - trace) / 2;
    return [(y[2] - z[1]) / (4 * i), i, (x[1] + y[0]) / (4 * i), (x[2] + z[0]) / (4 * i)];
  }
  if (y[1] >= z[2]) {
    const j = Math.sqrt(1 + 2 * y[1] - trace) / 2;
    return [(z[0] - x[2]) / (4 * j), (x[1] + y[0]) / (4 * j), j, (y[2] + z[1]) / (4 * j)];
  }
  const k = Math.sqrt(1 + 2 * z[2] - trace) / 2;
  return [(x[1] - y[0]) / (4 * k), (x[2] + z[0]) / (4 * k), (y[2] + z[1]) / (4 * k), k];
}
