import { sin } from '../math/index.ts';

/**
 * Shift of a liquid's center of mass in a cylinder that lies on its side, when effective gravity turns about the
 * cylinder's axis by an angle [rad]. In the tank's frame [m]: lateral + toward the side that a positive tilt lowers,
 * rise + away from the lowest line.
 *
 *   x = c sin β,   z = c (1 − cos β)
 *
 * c  liquid's center below the axis, with the tank level [m]     β  tilt [rad], of any size
 *
 * Exact for a surface at rest. Derivation: turned about its axis the cylinder looks the same, so the liquid stays where it
 * is under gravity, its center c along gravity from the axis. A half-full tank has c = 4 R/(3π), a full one 0. Tilt along
 * the axis is another matter and not covered here.
 */
export function lyingShift(centerBelowAxis: number, tilt: number): { readonly lateral: number; readonly rise: number } {
  const half = sin(tilt / 2);
  return { lateral: centerBelowAxis * sin(tilt), rise: 2 * centerBelowAxis * half * half };
}
