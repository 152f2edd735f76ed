/** Crush of the strut against soil and friction: the inner part of the plastic return. Derivations in README.md, "Return mapping". */
import type { TouchdownKernel } from './kernel.ts';
import {
  TRIAL_ACROSS,
  FOOT_BEARING,
  FOOT_CRUSH,
  TRIAL_DS,
  RUN_FRICTION,
  TRIAL_HELD_N,
  TRIAL_HELD_T1,
  TRIAL_HELD_T2,
  FOOT_LEG,
  TRIAL_SANK,
  TRIAL_SHIFT_N,
  TRIAL_SHIFT_T1,
  TRIAL_SHIFT_T2,
  FOOT_SINKAGE,
  FOOT_SOIL_COEFFICIENT,
  RUN_SOIL_EXPONENT,
  FOOT_STAGE,
  FOOT_STAGE_END,
  TRIAL_STIFF_N,
  TRIAL_STIFF_T,
  FOOT_STROKE,
  TRIAL_STRUT_N,
  TRIAL_STRUT_T1,
  TRIAL_STRUT_T2,
  TRIAL_N,
  TRIAL_T1,
  TRIAL_T2,
  FOUND_UNSETTLED,
} from './layout.ts';
import { furtherSinkage } from './soil.ts';

/** The axial load agrees with the crush force to this share [-]: far above rounding, far below any measurement. */
const FORCE_SHARE = 1e-8;
const MAX_ROOT_TURNS = 100;
/** A strut flatter to the ground than this does not crush, for its crush would not unload the pad [-]. */
const LEAST_NORMAL_SHARE = 1 / 64;

/** The permitted force for a given lateral set (surface axes): crush, soil and friction. Fills HELD_*, SHIFT_*, TRIAL_SANK and TRIAL_DS; books nothing. */
export function hold(kernel: TouchdownKernel, o: number, wn: number, w1: number, w2: number): void {
  const { trial } = kernel;
  const ds = crush(kernel, o, wn, w1, w2);
  trial[TRIAL_DS] = ds;
  trial[TRIAL_SHIFT_N] = wn + ds * trial[TRIAL_STRUT_N]!;
  trial[TRIAL_SHIFT_T1] = w1 + ds * trial[TRIAL_STRUT_T1]!;
  trial[TRIAL_SHIFT_T2] = w2 + ds * trial[TRIAL_STRUT_T2]!;
}

/**
 * Soil and friction in closed form after a permanent shift of the pad: the trial force less stiffness times shift, cut to the
 * bearing force and to the friction cone, into HELD_*. Returns the axial load that it puts on the strut [N].
 */
function axialLoad(kernel: TouchdownKernel, o: number, sn: number, s1: number, s2: number): number {
  const { feet, trial, run } = kernel;
  const kn = trial[TRIAL_STIFF_N]!;
  const kt = trial[TRIAL_STIFF_T]!;
  const pressed = trial[TRIAL_N]! - kn * sn;
  const t1 = trial[TRIAL_T1]! - kt * s1;
  const t2 = trial[TRIAL_T2]! - kt * s2;
  let normal = pressed > 0 ? pressed : 0;
  let sank = 0;
  if (normal > feet[o + FOOT_BEARING]!) {
    sank = furtherSinkage(
      normal,
      kn,
      feet[o + FOOT_SOIL_COEFFICIENT]!,
      run[RUN_SOIL_EXPONENT]!,
      feet[o + FOOT_SINKAGE]!,
    );
    normal -= kn * sank;
  }
  const across = Math.sqrt(t1 * t1 + t2 * t2);
  const limit = run[RUN_FRICTION]! * normal;
  const share = across > limit ? limit / across : 1;
  trial[TRIAL_SANK] = sank;
  trial[TRIAL_ACROSS] = across > limit ? across : 0;
  trial[TRIAL_HELD_N] = normal;
  trial[TRIAL_HELD_T1] = t1 * share;
  trial[TRIAL_HELD_T2] = t2 * share;
  return normal * trial[TRIAL_STRUT_N]! + t1 * share * trial[TRIAL_STRUT_T1]! + t2 * share * trial[TRIAL_STRUT_T2]!;
}

/**
 * By how much the axial load falls for each meter of shortening, in the state that axialLoad has just found [N/m]. On Bekker soil the rise of
 * the bearing force is left out: good for a Newton step.
 *
 *   sticks: k_n a_n^2 + k_t a_t^2
 *   slides: k_n a_n (a_n + mu t.a) + mu N k_t (a_t^2 - (t.a)^2) / |T_trial|         T = mu N t, t turning with T_trial
 *   a sinking pad: the same without k_n
 */
function axialSlope(kernel: TouchdownKernel): number {
  const { trial, run } = kernel;
  const an = trial[TRIAL_STRUT_N]!;
  const kn = trial[TRIAL_SANK]! > 0 ? 0 : trial[TRIAL_STIFF_N]!;
  const kt = trial[TRIAL_STIFF_T]!;
  const flat = 1 - an * an;
  const across = trial[TRIAL_ACROSS]!;
  if (across === 0) return kn * an * an + kt * flat;
  const held = trial[TRIAL_HELD_N]!;
  const mu = run[RUN_FRICTION]!;
  if (!(mu * held > 0)) return kn * an * an;
  const along =
    (trial[TRIAL_HELD_T1]! * trial[TRIAL_STRUT_T1]! + trial[TRIAL_HELD_T2]! * trial[TRIAL_STRUT_T2]!) / (mu * held);
  return kn * an * (an + mu * along) + (mu * held * kt * (flat - along * along)) / across;
}

/** Least shortening that brings the axial load to what the stages bear, through as many stages as it takes [m]; its force is left in HELD_*. */
function crush(kernel: TouchdownKernel, o: number, wn: number, w1: number, w2: number): number {
  const { feet, trial, stages } = kernel;
  const an = trial[TRIAL_STRUT_N]!;
  let limit = an < LEAST_NORMAL_SHARE ? Infinity : feet[o + FOOT_CRUSH]!;
  let end = feet[o + FOOT_STAGE_END]! - feet[o + FOOT_STROKE]!;
  let stage = feet[o + FOOT_STAGE]!;
  let from = 0;
  while (limit < Infinity) {
    const ds = crushRoot(kernel, o, limit, from, wn, w1, w2);
    if (ds < end) return ds;
    const forces = stages[feet[o + FOOT_LEG]!]!;
    from = Math.max(from, end);
    stage++;
    limit = 2 * stage < forces.length ? forces[2 * stage]! : Infinity;
    end += 2 * stage < forces.length ? forces[2 * stage + 1]! : 0;
  }
  axialLoad(kernel, o, wn + from * an, w1 + from * trial[TRIAL_STRUT_T1]!, w2 + from * trial[TRIAL_STRUT_T2]!);
  return from;
}

/**
 * Shortening, from `from` on, at which the axial load equals `limit`, or `from` if it is below it there: Newton steps inside the bracket
 * between `from` and N / (k a_n), where the pad is unloaded, and the middle of the bracket where a step would leave it or has not
 * gained enough. Starts from the shortening found last, in kernel.trial. The force of the result is left in HELD_*.
 */
function crushRoot(
  kernel: TouchdownKernel,
  o: number,
  limit: number,
  from: number,
  wn: number,
  w1: number,
  w2: number,
): number {
  const { trial, found } = kernel;
  const an = trial[TRIAL_STRUT_N]!;
  const a1 = trial[TRIAL_STRUT_T1]!;
  const a2 = trial[TRIAL_STRUT_T2]!;
  let low = from;
  let high = (trial[TRIAL_N]! - trial[TRIAL_STIFF_N]! * wn) / (trial[TRIAL_STIFF_N]! * an);
  const guess = trial[TRIAL_DS]!;
  let ds = guess > from && guess < high ? guess : from;
  let missBefore = Infinity;
  let triedFrom = false;
  for (let turn = 0; turn < MAX_ROOT_TURNS; turn++) {
    if (ds === from) triedFrom = true;
    const miss = axialLoad(kernel, o, wn + ds * an, w1 + ds * a1, w2 + ds * a2) - limit;
    if (Math.abs(miss) <= FORCE_SHARE * limit || (miss < 0 && ds === from)) return ds;
    if (miss > 0) low = ds;
    else high = ds;
    const newton = ds + miss / axialSlope(kernel);
    if (newton <= from && !triedFrom) {
      ds = from;
    } else {
      const gains = Math.abs(miss) < missBefore / 2;
      ds = gains && newton > low && newton < high ? newton : (low + high) / 2;
    }
    missBefore = Math.abs(miss);
  }
  found[FOUND_UNSETTLED] = found[FOUND_UNSETTLED]! + 1;
  return ds;
}
