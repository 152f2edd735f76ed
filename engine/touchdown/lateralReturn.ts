/** Yielding of the secondary strut: the outer part of the plastic return. Derivations in README.md, "Return mapping". */
import { hold } from './crushReturn.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  HELD_N,
  HELD_T1,
  HELD_T2,
  HIGH,
  HIGH_MISS,
  LAST_SET,
  LATERAL,
  LATERAL_END,
  LOW,
  LOW_MISS,
  SECONDARY,
  SIDE,
  STIFF_N,
  STIFF_T,
  STRUT_N,
  STRUT_T1,
  STRUT_T2,
  TOWARD,
  TURNED,
  UNSETTLED,
} from './layout.ts';

/** The lateral force agrees with its limit to this share [-]; its direction turns while it is approached. */
const LATERAL_SHARE = 1e-5;
/** The lateral set is along the lateral force to this cosine [-]. */
const ALIGNED = 0.9995;
const MAX_ROOT_TURNS = 100;
const MAX_DIRECTIONS = 60;

/**
 * Lateral set w = lambda d of the secondary strut, d along the lateral force that is left, so that this force is at its limit; or as much as the
 * strut has stroke for.
 *
 *   |f_lateral(w)| = limit,   w = lambda f_lateral / |f_lateral|
 *
 * For each direction lambda is a root in a sure bracket, for the lateral force of a foot that slides hardly falls with lambda until
 * the foot sticks; then the direction is turned. Starts from the set of the step before, which is nearly the same while the strut
 * goes on yielding. Returns lambda [m]; the force and the shift of the result are left in HELD_*, SHIFT_*.
 */
export function yieldSideways(kernel: TouchdownKernel, o: number): number {
  const { feet, trial, found } = kernel;
  const limit = feet[o + SECONDARY]!;
  const left = Math.max(0, feet[o + LATERAL_END]! - feet[o + LATERAL]!);
  hold(kernel, o, 0, 0, 0);
  // the force without lateral set
  const fn = trial[HELD_N]!;
  const f1 = trial[HELD_T1]!;
  const f2 = trial[HELD_T2]!;
  const lateral = lateralForce(trial);
  if (lateral <= limit * (1 + LATERAL_SHARE)) return 0;
  startDirection(trial, lateral);
  let lambda = Math.max(feet[o + LAST_SET]!, (lateral - limit) / lateralStiffness(trial));
  for (let turn = 0; turn < MAX_DIRECTIONS; turn++) {
    const over = fn * trial[TOWARD]! + f1 * trial[TOWARD + 1]! + f2 * trial[TOWARD + 2]! - limit;
    lambda = lateralRoot(kernel, o, limit, over, left, lambda);
    feet[o + LAST_SET] = lambda;
    if (turnDirection(trial, lambda)) return lambda;
  }
  found[UNSETTLED] = found[UNSETTLED]! + 1;
  return lambda;
}

/** Size of the held force across the strut [N]. */
export function lateralForce(trial: Float64Array): number {
  const axial = heldAxial(trial);
  const n = trial[HELD_N]! - axial * trial[STRUT_N]!;
  const t1 = trial[HELD_T1]! - axial * trial[STRUT_T1]!;
  const t2 = trial[HELD_T2]! - axial * trial[STRUT_T2]!;
  return Math.sqrt(n * n + t1 * t1 + t2 * t2);
}

function heldAxial(trial: Float64Array): number {
  return trial[HELD_N]! * trial[STRUT_N]! + trial[HELD_T1]! * trial[STRUT_T1]! + trial[HELD_T2]! * trial[STRUT_T2]!;
}

/** The first direction is that of the lateral force without a set; no side of the bracket is known. */
function startDirection(trial: Float64Array, lateral: number): void {
  const axial = heldAxial(trial);
  trial[TOWARD] = (trial[HELD_N]! - axial * trial[STRUT_N]!) / lateral;
  trial[TOWARD + 1] = (trial[HELD_T1]! - axial * trial[STRUT_T1]!) / lateral;
  trial[TOWARD + 2] = (trial[HELD_T2]! - axial * trial[STRUT_T2]!) / lateral;
  trial[LOW_MISS] = 0;
  trial[HIGH_MISS] = 0;
  trial[SIDE] = 0;
  trial[TURNED] = 0;
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
function turnDirection(trial: Float64Array, lambda: number): boolean {
  const an = trial[STRUT_N]!;
  const a1 = trial[STRUT_T1]!;
  const a2 = trial[STRUT_T2]!;
  let dn = trial[TOWARD]!;
  let d1 = trial[TOWARD + 1]!;
  let d2 = trial[TOWARD + 2]!;
  const lateral = lateralForce(trial);
  // d and e are across the strut, so the axial part of the force drops out
  const along = trial[HELD_N]! * dn + trial[HELD_T1]! * d1 + trial[HELD_T2]! * d2;
  if (along >= ALIGNED * lateral) return true;
  const en = a1 * d2 - a2 * d1;
  const e1 = a2 * dn - an * d2;
  const e2 = an * d1 - a1 * dn;
  const across = trial[HELD_N]! * en + trial[HELD_T1]! * e1 + trial[HELD_T2]! * e2;
  keepSide(trial, along > 0 ? across / lateral : Math.sign(across));
  const low = trial[LOW_MISS]!;
  const high = trial[HIGH_MISS]!;
  if (low > 0 && high < 0) {
    dn = low * trial[HIGH]! - high * trial[LOW]!;
    d1 = low * trial[HIGH + 1]! - high * trial[LOW + 1]!;
    d2 = low * trial[HIGH + 2]! - high * trial[LOW + 2]!;
  } else {
    const softened = along + lambda * lateralStiffness(trial);
    const own = softened > 0 ? across / softened : Math.sign(across);
    const twice = 2 * trial[TURNED]!;
    const turn = Math.max(-1, Math.min(1, Math.abs(own) > Math.abs(twice) ? own : twice));
    trial[TURNED] = turn;
    dn += turn * en;
    d1 += turn * e1;
    d2 += turn * e2;
  }
  const length = Math.sqrt(dn * dn + d1 * d1 + d2 * d2);
  trial[TOWARD] = dn / length;
  trial[TOWARD + 1] = d1 / length;
  trial[TOWARD + 2] = d2 / length;
  return false;
}

/** Makes the direction the near side of the bracket; the other side counts half when it was not replaced twice in a row. */
function keepSide(trial: Float64Array, miss: number): void {
  const side = miss > 0 ? 1 : -1;
  const near = miss > 0 ? LOW : HIGH;
  const nearMiss = miss > 0 ? LOW_MISS : HIGH_MISS;
  const farMiss = miss > 0 ? HIGH_MISS : LOW_MISS;
  for (let i = 0; i < 3; i++) trial[near + i] = trial[TOWARD + i]!;
  trial[nearMiss] = miss;
  if (trial[SIDE] === side) trial[farMiss] = trial[farMiss]! / 2;
  trial[SIDE] = side;
}

/** Of a foot that sticks, along the direction of the set [N/m]; a foot that slides or crushes is softer. */
function lateralStiffness(trial: Float64Array): number {
  const dn = trial[TOWARD]!;
  const d1 = trial[TOWARD + 1]!;
  const d2 = trial[TOWARD + 2]!;
  return trial[STIFF_N]! * dn * dn + trial[STIFF_T]! * (d1 * d1 + d2 * d2);
}

/** Lateral force along the direction of the set, after a set `lambda`, less the limit [N]. */
function lateralMiss(kernel: TouchdownKernel, o: number, limit: number, lambda: number): number {
  const { trial } = kernel;
  const dn = trial[TOWARD]!;
  const d1 = trial[TOWARD + 1]!;
  const d2 = trial[TOWARD + 2]!;
  hold(kernel, o, lambda * dn, lambda * d1, lambda * d2);
  // d is across the strut, so the axial part of the force drops out
  return trial[HELD_N]! * dn + trial[HELD_T1]! * d1 + trial[HELD_T2]! * d2 - limit;
}

/**
 * Lateral set along d at which the lateral force along d is at the limit, 0 if it is below it anyway, `left` if it never is: false position (Illinois)
 * in a bracket found from the guess.
 */
function lateralRoot(
  kernel: TouchdownKernel,
  o: number,
  limit: number,
  overAtZero: number,
  left: number,
  guess: number,
): number {
  const { trial, found } = kernel;
  const close = LATERAL_SHARE * limit;
  let lambda = Math.min(guess, left);
  let miss = lateralMiss(kernel, o, limit, lambda);
  if (Math.abs(miss) <= close) return lambda;
  let low = 0;
  let over = overAtZero;
  let high = lambda;
  let under = miss;
  if (miss < 0 && over <= close) {
    hold(kernel, o, 0, 0, 0);
    return 0;
  }
  if (miss > 0) {
    const stiffness = lateralStiffness(trial);
    while (miss > 0) {
      if (lambda >= left) return left;
      low = lambda;
      over = miss;
      lambda = Math.min(left, lambda + Math.max(miss / stiffness, lambda / 2));
      miss = lateralMiss(kernel, o, limit, lambda);
      if (Math.abs(miss) <= close) return lambda;
    }
    high = lambda;
    under = miss;
  }
  let side = 0;
  for (let turn = 0; turn < MAX_ROOT_TURNS; turn++) {
    lambda = (low * under - high * over) / (under - over);
    miss = lateralMiss(kernel, o, limit, lambda);
    if (Math.abs(miss) <= close) return lambda;
    if (miss > 0) {
      low = lambda;
      over = miss;
      if (side === 1) under /= 2;
      side = 1;
    } else {
      high = lambda;
      under = miss;
      if (side === -1) over /= 2;
      side = -1;
    }
  }
  found[UNSETTLED] = found[UNSETTLED]! + 1;
  return lambda;
}
