import { cos, dot3, sin } from '../math/index.ts';
import type { BodyPoint } from './lander.ts';

/**
 * Inertia tensor about some point, axes parallel to the body's [kg·m²]. xy, xz and yz are the tensor's own off-diagonal
 * components, −∫ x y dm and so on.
 */
export interface InertiaTensor {
  readonly xx: number;
  readonly yy: number;
  readonly zz: number;
  readonly xy: number;
  readonly xz: number;
  readonly yz: number;
}

export const NO_INERTIA: InertiaTensor = { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 };

export function addInertia(a: InertiaTensor, b: InertiaTensor): InertiaTensor {
  return {
    xx: a.xx + b.xx,
    yy: a.yy + b.yy,
    zz: a.zz + b.zz,
    xy: a.xy + b.xy,
    xz: a.xz + b.xz,
    yz: a.yz + b.yz,
  };
}

/**
 * Inertia of a point mass about the origin: what the parallel-axis theorem adds for a body whose center lies at `at`.
 *
 *   I' = I + m (|d|² E − d dᵀ)                          parallel-axis theorem (Steiner)
 *
 * m  mass [kg]      d  from the new point to the center of mass [m]
 */
export function pointInertia(mass: number, at: BodyPoint): InertiaTensor {
  const [x, y, z] = at;
  return {
    xx: mass * (y * y + z * z),
    yy: mass * (x * x + z * z),
    zz: mass * (x * x + y * y),
    xy: -mass * x * y,
    xz: -mass * x * z,
    yz: -mass * y * z,
  };
}

/** I·v: angular momentum [kg·m²/s] of a body that turns with v [rad/s]. */
export function applyInertia(tensor: InertiaTensor, v: BodyPoint): BodyPoint {
  const { xx, yy, zz, xy, xz, yz } = tensor;
  return [xx * v[0] + xy * v[1] + xz * v[2], xy * v[0] + yy * v[1] + yz * v[2], xz * v[0] + yz * v[1] + zz * v[2]];
}

/** Moment of inertia about the axis along a unit vector [kg·m²]. */
export function inertiaAlong(tensor: InertiaTensor, axis: BodyPoint): number {
  return dot3(axis, applyInertia(tensor, axis));
}

/** Moment of inertia about the axis that lies across the body (in its x-y plane) at an azimuth [kg·m²]. */
export function inertiaAbout(tensor: InertiaTensor, azimuth: number): number {
  return inertiaAlong(tensor, [cos(azimuth), sin(azimuth), 0]);
}
