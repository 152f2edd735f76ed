/**
 * A pad or hull point that meets or leaves the ground within a step has pressed for a share of it only; the difference to what the two half kicks count
 * is gathered here and added at the end of the step. Derivation in README.md, "Onset and release".
 */

/** Adds `weight` times a force at an arm to the impulses of the step, in units of the step. */
export function addImpulse(
  impulse: Float64Array,
  weight: number,
  fx: number,
  fy: number,
  fz: number,
  rx: number,
  ry: number,
  rz: number,
): void {
  impulse[0] = impulse[0]! + weight * fx;
  impulse[1] = impulse[1]! + weight * fy;
  impulse[2] = impulse[2]! + weight * fz;
  impulse[3] = impulse[3]! + weight * (ry * fz - rz * fy);
  impulse[4] = impulse[4]! + weight * (rz * fx - rx * fz);
  impulse[5] = impulse[5]! + weight * (rx * fy - ry * fx);
}

/**
 * Impulse of a contact that began within the step, less the half that is counted, over step and force at its end [-].
 *
 * share  of the step in contact          first  force of the dashpot at once        pressed  trial force, `normal` where nothing has cut it
 */
export function onsetWeight(share: number, first: number, normal: number, pressed: number): number {
  const ramp = first < normal ? (normal - first) / (2 * normal) : 0;
  // a lateral set may press the pad in, beyond the trial force: then nothing is cut
  const reached = pressed > normal ? (normal - first) / (pressed - first) : 1;
  return share * (1 - ramp * reached) - 0.5;
}

/**
 * Takes off what a contact that ends within the step has pressed too much. Its force at the last step is taken from its springs:
 * stiffness kn, dashpot cn over the step, depth `before` then and `un` now, force1 and force2 across the surface.
 */
export function addReleaseImpulse(
  impulse: Float64Array,
  kn: number,
  cn: number,
  before: number,
  un: number,
  force1: number,
  force2: number,
  nx: number,
  nz: number,
  rx: number,
  ry: number,
  rz: number,
): void {
  const normal = kn * before + cn * (un - before);
  if (!(normal > 0)) return;
  const share = Math.min(1, normal / (kn * (before - un)));
  const weight = (share - 1) / 2;
  addImpulse(impulse, weight, nz * force1 + nx * normal, force2, nz * normal - nx * force1, rx, ry, rz);
}
