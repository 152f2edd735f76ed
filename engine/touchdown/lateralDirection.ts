/** The direction in which the secondary strut yields, in kernel.trial: TRIAL_TOWARD and what encloses it. */
import {
  TRIAL_HELD_N,
  TRIAL_HELD_T1,
  TRIAL_HELD_T2,
  TRIAL_HIGH,
  TRIAL_HIGH_MISS,
  TRIAL_LOW,
  TRIAL_LOW_MISS,
  TRIAL_SIDE,
  TRIAL_STIFF_N,
  TRIAL_STIFF_T,
  TRIAL_STRUT_N,
  TRIAL_STRUT_T1,
  TRIAL_STRUT_T2,
  TRIAL_TOWARD,
  TRIAL_TURNED,
} from './layout.ts';

/** The lateral set is along the lateral force to this cosine [-]. */
const ALIGNED = 0.9995;

/** Size of the held force across the strut [N]. */
export function lateralForce(trial: Float64Array): number {
  const axial = heldAxial(trial);
  const n = trial[TRIAL_HELD_N]! - axial * trial[TRIAL_STRUT_N]!;
  const t1 = trial[TRIAL_HELD_T1]! - axial * trial[TRIAL_STRUT_T1]!;
  const t2 = trial[TRIAL_HELD_T2]! - axial * trial[TRIAL_STRUT_T2]!;
  return Math.sqrt(n * n + t1 * t1 + t2 * t2);
}

function heldAxial(trial: Float64Array): number {
  return (
    trial[TRIAL_HELD_N]! * trial[TRIAL_STRUT_N]! +
    trial[TRIAL_HELD_T1]! * trial[TRIAL_STRUT_T1]! +
    trial[TRIAL_HELD_T2]! * trial[TRIAL_STRUT_T2]!
  );
}

/** The first direction is that of the lateral force without a set; no side of the bracket is known. */
export function startDirection(trial: Float64Array, lateral: number): void {
  const axial = heldAxial(trial);
  trial[TRIAL_TOWARD] = (trial[TRIAL_HELD_N]! - axial * trial[TRIAL_STRUT_N]!) / lateral;
  trial[TRIAL_TOWARD + 1] = (trial[TRIAL_HELD_T1]! - axial * trial[TRIAL_STRUT_T1]!) / lateral;
  trial[TRIAL_TOWARD + 2] = (trial[TRIAL_HELD_T2]! - axial * trial[TRIAL_STRUT_T2]!) / lateral;
  trial[TRIAL_LOW_MISS] = 0;
  trial[TRIAL_HIGH_MISS] = 0;
  trial[TRIAL_SIDE] = 0;
  trial[TRIAL_TURNED] = 0;
}

/**
 * Turns the direction of the lateral set toward the lateral force that is left after it; true when the two agree.
 *
 *   miss(d) = f.e / |f|,   e = a x d       sine of the angle from the set to the force, about the strut axis a
 *
 * The set lies in the plane across the strut, so its direction is one number and the miss has a root. Until two directions enclose it, d goes toward
 * f + k w, which a set along it would leave unchanged (that of f itself would swing to and fro), and at least twice as far as before, for a
 * foot that slides or sinks is much softer than k; then false position (Illinois) between the two.
 */
export function turnDirection(trial: Float64Array, lambda: number): boolean {
  const an = trial[TRIAL_STRUT_N]!;
  const a1 = trial[TRIAL_STRUT_T1]!;
  const a2 = trial[TRIAL_STRUT_T2]!;
  let dn = trial[TRIAL_TOWARD]!;
  let d1 = trial[TRIAL_TOWARD + 1]!;
  let d2 = trial[TRIAL_TOWARD + 2]!;
  const lateral = lateralForce(trial);
  // d and e are across the strut, so the axial part of the force drops out
  const along = trial[TRIAL_HELD_N]! * dn + trial[TRIAL_HELD_T1]! * d1 + trial[TRIAL_HELD_T2]! * d2;
  if (along >= ALIGNED * lateral) return true;
  const en = a1 * d2 - a2 * d1;
  const e1 = a2 * dn - an * d2;
  const e2 = an * d1 - a1 * dn;
  const across = trial[TRIAL_HELD_N]! * en + trial[TRIAL_HELD_T1]! * e1 + trial[TRIAL_HELD_T2]! * e2;
  keepSide(trial, along > 0 ? across / lateral : Math.sign(across));
  const low = trial[TRIAL_LOW_MISS]!;
  const high = trial[TRIAL_HIGH_MISS]!;
  if (low > 0 && high < 0) {
    dn = low * trial[TRIAL_HIGH]! - high * trial[TRIAL_LOW]!;
    d1 = low * trial[TRIAL_HIGH + 1]! - high * trial[TRIAL_LOW + 1]!;
    d2 = low * trial[TRIAL_HIGH + 2]! - high * trial[TRIAL_LOW + 2]!;
  } else {
    const softened = along + lambda * lateralStiffness(trial);
    const own = softened > 0 ? across / softened : Math.sign(across);
    const twice = 2 * trial[TRIAL_TURNED]!;
    const turn = Math.max(-1, Math.min(1, Math.abs(own) > Math.abs(twice) ? own : twice));
    trial[TRIAL_TURNED] = turn;
    dn += turn * en;
    d1 += turn * e1;
    d2 += turn * e2;
  }
  const length = Math.sqrt(dn * dn + d1 * d1 + d2 * d2);
  trial[TRIAL_TOWARD] = dn / length;
  trial[TRIAL_TOWARD + 1] = d1 / length;
  trial[TRIAL_TOWARD + 2] = d2 / length;
  return false;
}

/** Makes the direction the near side of the bracket; the other side counts half when it was not replaced twice in a row. */
function keepSide(trial: Float64Array, miss: number): void {
  const side = miss > 0 ? 1 : -1;
  const near = miss > 0 ? TRIAL_LOW : TRIAL_HIGH;
  const nearMiss = miss > 0 ? TRIAL_LOW_MISS : TRIAL_HIGH_MISS;
  const farMiss = miss > 0 ? TRIAL_HIGH_MISS : TRIAL_LOW_MISS;
  for (let i = 0; i < 3; i++) trial[near + i] = trial[TRIAL_TOWARD + i]!;
  trial[nearMiss] = miss;
  if (trial[TRIAL_SIDE] === side) trial[farMiss] = trial[farMiss]! / 2;
  trial[TRIAL_SIDE] = side;
}

/** Of a foot that sticks, along the direction of the set [N/m]; a foot that slides or crushes is softer. */
export function lateralStiffness(trial: Float64Array): number {
  const dn = trial[TRIAL_TOWARD]!;
  const d1 = trial[TRIAL_TOWARD + 1]!;
  const d2 = trial[TRIAL_TOWARD + 2]!;
  return trial[TRIAL_STIFF_N]! * dn * dn + trial[TRIAL_STIFF_T]! * (d1 * d1 + d2 * d2);
}
