/** Yielding of the secondary strut: the outer part of the plastic return. Derivations in README.md, "Return mapping". */
import { hold } from './crushReturn.ts';
import type { TouchdownKernel } from './kernel.ts';
import { lateralForce, lateralStiffness, startDirection, turnDirection } from './lateralDirection.ts';
import {
  TRIAL_HELD_N,
  TRIAL_HELD_T1,
  TRIAL_HELD_T2,
  FOOT_LAST_SET,
  FOOT_LATERAL,
  FOOT_LATERAL_END,
  FOOT_SECONDARY,
  TRIAL_TOWARD,
  FOUND_UNSETTLED,
} from './layout.ts';

/** The lateral force agrees with its limit to this share [-]; its direction turns while it is approached. */
const LATERAL_SHARE = 1e-5;
const MAX_ROOT_TURNS = 100;
const MAX_DIRECTIONS = 60;
const MAX_HALVINGS = 4;

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
  const limit = feet[o + FOOT_SECONDARY]!;
  const left = Math.max(0, feet[o + FOOT_LATERAL_END]! - feet[o + FOOT_LATERAL]!);
  hold(kernel, o, 0, 0, 0);
  // the force without lateral set
  const fn = trial[TRIAL_HELD_N]!;
  const f1 = trial[TRIAL_HELD_T1]!;
  const f2 = trial[TRIAL_HELD_T2]!;
  const lateral = lateralForce(trial);
  if (lateral <= limit * (1 + LATERAL_SHARE)) return 0;
  startDirection(trial, lateral);
  let lambda = Math.max(feet[o + FOOT_LAST_SET]!, (lateral - limit) / lateralStiffness(trial));
  for (let turn = 0; turn < MAX_DIRECTIONS; turn++) {
    const over = fn * trial[TRIAL_TOWARD]! + f1 * trial[TRIAL_TOWARD + 1]! + f2 * trial[TRIAL_TOWARD + 2]! - limit;
    lambda = lateralRoot(kernel, o, limit, over, left, lambda);
    feet[o + FOOT_LAST_SET] = lambda;
    if (turnDirection(trial, lambda)) return lambda;
  }
  found[FOUND_UNSETTLED] = found[FOUND_UNSETTLED]! + 1;
  return lambda;
}

/** Lateral force along the direction of the set, after a set `lambda`, less the limit [N]. */
function lateralMiss(kernel: TouchdownKernel, o: number, limit: number, lambda: number): number {
  const { trial } = kernel;
  const dn = trial[TRIAL_TOWARD]!;
  const d1 = trial[TRIAL_TOWARD + 1]!;
  const d2 = trial[TRIAL_TOWARD + 2]!;
  hold(kernel, o, lambda * dn, lambda * d1, lambda * d2);
  // d is across the strut, so the axial part of the force drops out
  return trial[TRIAL_HELD_N]! * dn + trial[TRIAL_HELD_T1]! * d1 + trial[TRIAL_HELD_T2]! * d2 - limit;
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
  const { trial } = kernel;
  const close = LATERAL_SHARE * limit;
  let lambda = Math.min(guess, left);
  let miss = lateralMiss(kernel, o, limit, lambda);
  if (Math.abs(miss) <= close) return lambda;
  let low = 0;
  let over = overAtZero;
  let high = lambda;
  let under = miss;
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
  } else if (over <= close) {
    // while the foot slides or crushes the force may rise with a small set before it falls
    for (let turn = 0; turn < MAX_HALVINGS && over <= close; turn++) {
      low = high / 2;
      over = lateralMiss(kernel, o, limit, low);
      if (Math.abs(over) <= close) return low;
      if (over < 0) {
        high = low;
        under = over;
      }
    }
    if (over <= close) {
      hold(kernel, o, 0, 0, 0);
      return 0;
    }
  }
  return lateralRootBetween(kernel, o, limit, low, over, high, under);
}

/** False position (Illinois) between a set of too much force and one of too little. */
function lateralRootBetween(
  kernel: TouchdownKernel,
  o: number,
  limit: number,
  low: number,
  over: number,
  high: number,
  under: number,
): number {
  const close = LATERAL_SHARE * limit;
  let lambda = low;
  let side = 0;
  for (let turn = 0; turn < MAX_ROOT_TURNS; turn++) {
    lambda = (low * under - high * over) / (under - over);
    const miss = lateralMiss(kernel, o, limit, lambda);
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
  kernel.found[FOUND_UNSETTLED] = kernel.found[FOUND_UNSETTLED]! + 1;
  return lambda;
}
