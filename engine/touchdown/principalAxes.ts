import type { Vec3 } from '../math/vec3.ts';

/** A symmetric tensor in three dimensions. For an inertia, xy is minus the product of inertia (the matrix element). */
interface SymmetricTensor {
  readonly xx: number;
  readonly yy: number;
  readonly zz: number;
  readonly xy: number;
  readonly xz: number;
  readonly yz: number;
}

interface PrincipalAxes {
  /** Principal moments, in the order of the axes. */
  readonly moments: Vec3;
  /** Rows are the principal axes in the frame of the tensor; right-handed. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
}

type Matrix = [[number, number, number], [number, number, number], [number, number, number]];

/** Off-diagonal elements below this share of the trace count as zero [-]. Rounding of the sum of three squares. */
const DIAGONAL_ENOUGH = 8 * Number.EPSILON;

/** Jacobi's method squares the error each sweep; three by three needs at most six. */
const MAX_SWEEPS = 12;

/**
 * Principal axes of a symmetric tensor by cyclic Jacobi rotations.
 *
 *   t = sign(theta) / (|theta| + sqrt(theta^2 + 1)),  theta = (a_qq - a_pp) / (2 a_pq),  c = 1/sqrt(t^2 + 1),  s = t c
 *                                                                                  [GolubVanLoan2013] sec. 8.5.2
 * A tensor that is diagonal already keeps its axes and their order. Pure.
 */
export function principalAxes(tensor: SymmetricTensor): PrincipalAxes {
  const a: Matrix = [
    [tensor.xx, tensor.xy, tensor.xz],
    [tensor.xy, tensor.yy, tensor.yz],
    [tensor.xz, tensor.yz, tensor.zz],
  ];
  const axes: Matrix = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const small = DIAGONAL_ENOUGH * (Math.abs(tensor.xx) + Math.abs(tensor.yy) + Math.abs(tensor.zz));
  for (let sweep = 0; sweep < MAX_SWEEPS; sweep++) {
    if (Math.abs(a[0][1]) + Math.abs(a[0][2]) + Math.abs(a[1][2]) <= small) break;
    for (const [p, q] of PAIRS) rotatePair(a, axes, p, q);
  }
  return { moments: [a[0][0], a[1][1], a[2][2]], axes };
}

const PAIRS = [
  [0, 1],
  [0, 2],
  [1, 2],
] as const;

/** Turns rows and columns p and q so that a[p][q] vanishes, and the axes with them. */
function rotatePair(a: Matrix, axes: Matrix, p: 0 | 1 | 2, q: 0 | 1 | 2): void {
  if (a[p][q] === 0) return;
  const theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const c = 1 / Math.sqrt(t * t + 1);
  const s = t * c;
  for (const k of [0, 1, 2] as const) {
    const [kp, kq] = [a[k][p], a[k][q]];
    a[k][p] = c * kp - s * kq;
    a[k][q] = s * kp + c * kq;
  }
  for (const k of [0, 1, 2] as const) {
    const [pk, qk] = [a[p][k], a[q][k]];
    a[p][k] = c * pk - s * qk;
    a[q][k] = s * pk + c * qk;
    const [vp, vq] = [axes[p][k], axes[q][k]];
    axes[p][k] = c * vp - s * vq;
    axes[q][k] = s * vp + c * vq;
  }
}
