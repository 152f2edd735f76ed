/** Crush of the strut against soil and friction: the inner part of the plastic return. Derivations in README.md, "Return mapping". */
import type { TouchdownKernel } from './kernel.ts';
import {
  ACROSS,
  BEARING,
  CRUSH,
  DS,
  FRICTION,
  HELD_N,
  HELD_T1,
  HELD_T2,
  LEG,
  SANK,
  SHIFT_N,
  SHIFT_T1,
  SHIFT_T2,
  SINKAGE,
  SOIL_COEFFICIENT,
  SOIL_EXPONENT,
  STAGE,
  STAGE_END,
  STIFF_N,
  STIFF_T,
  STROKE,
  STRUT_N,
  STRUT_T1,
  STRUT_T2,
  TRIAL_N,
  TRIAL_T1,
  TRIAL_T2,
  UNSETTLED,
} from './layout.ts';
import { furtherSinkage } from './soil.ts';

/** The axial load agrees with the crush force to this share [-]: far above rounding, far below any measurement. */
const FORCE_SHARE = 1e-8;
const MAX_ROOT_TURNS = 100;
/** A strut flatter to the ground than this does not crush, for its crush would not unload the pad [-]. */
const LEAST_NORMAL_SHARE = 1 / 64;

/** The permitted force for a given lateral set (surface axes): crush, soil and friction. Fills HELD_*, SHIFT_*, SANK and DS; books nothing. */
export function hold(kernel: TouchdownKernel, o: number, wn: number, w1: number, w2: number): void {
  const { trial } = kernel;
  const ds = crush(kernel, o, wn, w1, w2);
  trial[DS] = ds;
  trial[SHIFT_N] = wn + ds * trial[STRUT_N]!;
  trial[SHIFT_T1] = w1 + ds * trial[STRUT_T1]!;
  trial[SHIFT_T2] = w2 + ds * trial[STRUT_T2]!;
}

/**
 * Soil and friction in closed form after a permanent shift of the pad: the trial force less stiffness times shift, cut to the
 * bearing force and to the friction cone, into HELD_*. Returns the axial load that it puts on the strut [N].
 */
function axialLoad(kernel: TouchdownKernel, o: number, sn: number, s1: number, s2: number): number {
  const { feet, trial, run } = kernel;
  const kn = trial[STIFF_N]!;
  const kt = trial[STIFF_T]!;
  const pressed = trial[TRIAL_N]! - kn * sn;
  const t1 = trial[TRIAL_T1]! - kt * s1;
  const t2 = trial[TRIAL_T2]! - kt * s2;
  let normal = pressed > 0 ? pressed : 0;
  let sank = 0;
  if (normal > feet[o + BEARING]!) {
    sank = furtherSinkage(normal, kn, feet[o + SOIL_COEFFICIENT]!, run[SOIL_EXPONENT]!, feet[o + SINKAGE]!);
    normal -= kn * sank;
  }
  const across = Math.sqrt(t1 * t1 + t2 * t2);
  const limit = run[FRICTION]! * normal;
  const share = across > limit ? limit / across : 1;
  trial[SANK] = sank;
  trial[ACROSS] = across > limit ? across : 0;
  trial[HELD_N] = normal;
  trial[HELD_T1] = t1 * share;
  trial[HELD_T2] = t2 * share;
  return normal * trial[STRUT_N]! + t1 * share * trial[STRUT_T1]! + t2 * share * trial[STRUT_T2]!;
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
  const an = trial[STRUT_N]!;
  const kn = trial[SANK]! > 0 ? 0 : trial[STIFF_N]!;
  const kt = trial[STIFF_T]!;
  const flat = 1 - an * an;
  const across = trial[ACROSS]!;
  if (across === 0) return kn * an * an + kt * flat;
  const held = trial[HELD_N]!;
  const mu = run[FRICTION]!;
  if (!(mu * held > 0)) return kn * an * an;
  const along = (trial[HELD_T1]! * trial[STRUT_T1]! + trial[HELD_T2]! * trial[STRUT_T2]!) / (mu * held);
  return kn * an * (an + mu * along) + (mu * held * kt * (flat - along * along)) / across;
}

/** Least shortening that brings the axial load to what the stages bear, through as many stages as it takes [m]; its force is left in HELD_*. */
function crush(kernel: TouchdownKernel, o: number, wn: number, w1: number, w2: number): number {
  const { feet, trial, stages } = kernel;
  const an = trial[STRUT_N]!;
  let limit = an < LEAST_NORMAL_SHARE ? Infinity : feet[o + CRUSH]!;
  let end = feet[o + STAGE_END]! - feet[o + STROKE]!;
  let stage = feet[o + STAGE]!;
  let from = 0;
  while (limit < Infinity) {
    const ds = crushRoot(kernel, o, limit, from, wn, w1, w2);
    if (ds < end) return ds;
    const forces = stages[feet[o + LEG]!]!;
    from = Math.max(from, end);
    stage++;
    limit = 2 * stage < forces.length ? forces[2 * stage]! : Infinity;
    end += 2 * stage < forces.length ? forces[2 * stage + 1]! : 0;
  }
  axialLoad(kernel, o, wn + from * an, w1 + from * trial[STRUT_T1]!, w2 + from * trial[STRUT_T2]!);
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
  const an = trial[STRUT_N]!;
  const a1 = trial[STRUT_T1]!;
  const a2 = trial[STRUT_T2]!;
  let low = from;
  let high = (trial[TRIAL_N]! - trial[STIFF_N]! * wn) / (trial[STIFF_N]! * an);
  const guess = trial[DS]!;
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
  found[UNSETTLED] = found[UNSETTLED]! + 1;
  return ds;
}
