/** Whether a hull point that is still off the ground may catch a body that tips. Reasons in README.md, "Outcome". */
import { NEAR_COSINE, ROLL_COSINE } from './constants.ts';
import { EDGE, EDGE_FOOT, OUTWARD } from './footprint.ts';
import type { TouchdownKernel } from './kernel.ts';
import { BODY_R11, FOOT_NORMAL_X, FOOT_NORMAL_Z, FOOT_SIZE, FOOT_TOUCHING, HULL_SIZE, RUN_GX } from './layout.ts';
import type { StartedRun } from './startTouchdown.ts';

/**
 * True when the body, turned about the nearest edge until a hull point meets the ground, would stand with its plumb line short of that point, and could have
 * kept enough energy to come back from there.
 *
 *   e^2 (E / m g + d) >= l + d
 *
 * e^2  share of the energy of an impact that a rebound gives back      E / m g  `energy`: height of kinetic and elastic energy      l  `lift` over the lowest edge
 * d    by how much the center of mass comes down on its way to the impact
 */
export function mayBeCaught(
  kernel: TouchdownKernel,
  started: StartedRun,
  answer: Float64Array,
  energy: number,
  lift: number,
): boolean {
  const { body, hull, feet, feetEnd, footprint, run } = kernel;
  if (footprint.length < 3) return false;
  let nx = 0;
  let nz = 1;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    if (feet[o + FOOT_TOUCHING] === 0) continue;
    nx = feet[o + FOOT_NORMAL_X]!;
    nz = feet[o + FOOT_NORMAL_Z]!;
  }
  const [ex, ey, ez] = [answer[EDGE]!, answer[EDGE + 1]!, answer[EDGE + 2]!];
  const [fx, fy, fz] = [answer[EDGE_FOOT]!, answer[EDGE_FOOT + 1]!, answer[EDGE_FOOT + 2]!];
  // across the edge, outward along the ground: e x n
  const [ax, ay, az] = [ey * nz, ez * nx - ex * nz, -ey * nx];
  const upAcross = -(run[RUN_GX]! * ax + run[RUN_GX + 1]! * ay + run[RUN_GX + 2]! * az) / started.gravity;
  const upNormal = -(run[RUN_GX]! * nx + run[RUN_GX + 2]! * nz) / started.gravity;
  const outAcross = answer[OUTWARD]! * ax + answer[OUTWARD + 1]! * ay + answer[OUTWARD + 2]! * az;
  const outNormal = answer[OUTWARD]! * nx + answer[OUTWARD + 2]! * nz;
  const u = -(fx * ax + fy * ay + fz * az);
  const w = -(fx * nx + fz * nz);
  for (let o = 0; o < hull.length; o += HULL_SIZE) {
    const [bx, by, bz] = [hull[o]!, hull[o + 1]!, hull[o + 2]!];
    const qx = body[BODY_R11]! * bx + body[BODY_R11 + 1]! * by + body[BODY_R11 + 2]! * bz - fx;
    const qy = body[BODY_R11 + 3]! * bx + body[BODY_R11 + 4]! * by + body[BODY_R11 + 5]! * bz - fy;
    const qz = body[BODY_R11 + 6]! * bx + body[BODY_R11 + 7]! * by + body[BODY_R11 + 8]! * bz - fz;
    const across = qx * ax + qy * ay + qz * az;
    const above = qx * nx + qz * nz;
    const arm = Math.sqrt(across * across + above * above);
    // the center of mass once the point has come down to the ground
    const uThen = (u * across + w * above) / arm;
    const wThen = (w * across - u * above) / arm;
    if (uThen * outAcross + wThen * outNormal >= arm * outAcross) continue;
    const down = (u - uThen) * upAcross + (w - wThen) * upNormal;
    const near = across > NEAR_COSINE * arm || upNormal < ROLL_COSINE;
    if ((near ? 1 : started.rebound) * (energy + down) >= lift + down) return true;
  }
  return false;
}
