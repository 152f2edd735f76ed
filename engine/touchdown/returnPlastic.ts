/**
 * Plastic return of one foot: crush, lateral set, sinkage and slip in one implicit step of perfect plasticity [SH1998] ch. 3.
 * The law and its derivation stand in README.md, "Return mapping".
 */
import type { TouchdownKernel } from './kernel.ts';
import {
  ACROSS,
  ANCHOR1,
  ANCHOR2,
  BEARING,
  CRUSH,
  CRUSH_WORK,
  DAMPING_WORK,
  DASH_N,
  DASH_T,
  DS,
  FRICTION,
  FRICTION_WORK,
  HELD_N,
  HELD_T1,
  HELD_T2,
  LAST_SET,
  LATERAL,
  LATERAL_END,
  LEG,
  LEVEL,
  SANK,
  SECONDARY,
  SHIFT_N,
  SHIFT_T1,
  SHIFT_T2,
  SINKAGE,
  SLIDE,
  SOIL_COEFFICIENT,
  SOIL_EXPONENT,
  SOIL_WORK,
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
  U1,
  U2,
  UN,
  UNSETTLED,
} from './layout.ts';
import { nextStage, restiffen } from './legStages.ts';
import { bekkerForce, furtherSinkage } from './soil.ts';

/** The axial load agrees with the crush force to this share [-]: far above rounding, far below any measurement. */
const FORCE_SHARE = 1e-8;
/** The lateral force agrees with its limit to this share [-]; its direction turns while it is approached. */
const LATERAL_SHARE = 1e-5;
/** The lateral set is along the lateral force to this cosine [-]. */
const ALIGNED = 0.9995;
const MAX_ROOT_TURNS = 100;
const MAX_DIRECTIONS = 60;
/** A strut flatter to the ground than this does not crush, for its crush would not unload the pad [-]. */
const LEAST_NORMAL_SHARE = 1 / 64;

/**
 * Brings a trial force inside all limits and books the permanent deformation of the foot at offset `o`, whose unloaded pad
 * stands at surface coordinates at1, at2.
 *
 * In kernel.trial: TRIAL_*, STRUT_*, STIFF_* and DASH_*. Out: the permitted force in HELD_*, the permanent shift of the pad in
 * SHIFT_*; stroke, sinkage, elastic approach, anchor and work are updated. The place of the pad in the body is left to the caller.
 */
export function returnPlastic(kernel: TouchdownKernel, o: number, at1: number, at2: number): void {
  const { feet, trial } = kernel;
  trial[DS] = 0;
  let lateral = 0;
  if (feet[o + SECONDARY]! < Infinity) lateral = yieldSideways(kernel, o);
  else hold(kernel, o, 0, 0, 0);
  const bottoms = bookLeg(kernel, o, lateral);
  bookGround(kernel, o);
  if (bottoms) trial[SHIFT_N] = trial[SHIFT_N]! + restiffen(kernel, o);
  feet[o + ANCHOR1] = at1 + trial[SHIFT_T1]! + feet[o + U1]!;
  feet[o + ANCHOR2] = at2 + trial[SHIFT_T2]! + feet[o + U2]!;
}

/** The permitted force for a given lateral set (surface axes): crush, soil and friction. Fills HELD_*, SHIFT_*, SANK and DS; books nothing. */
function hold(kernel: TouchdownKernel, o: number, wn: number, w1: number, w2: number): void {
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

/**
 * Lateral set w = lambda d of the secondary strut, d along the lateral force that is left, so that this force is at its limit; or as much as the
 * strut has stroke for.
 *
 *   |f_lateral(w)| = limit,   w = lambda f_lateral / |f_lateral|
 *
 * For each direction lambda is a root in a sure bracket, for the lateral force of a foot that slides hardly falls with lambda until
 * the foot sticks; then the direction is taken anew. Both start from the set of the step before, which is nearly the same while the strut
 * goes on yielding. Returns lambda [m]; the force and the shift of the result are left in HELD_*, SHIFT_*.
 */
function yieldSideways(kernel: TouchdownKernel, o: number): number {
  const { feet, trial, found } = kernel;
  const limit = feet[o + SECONDARY]!;
  const left = Math.max(0, feet[o + LATERAL_END]! - feet[o + LATERAL]!);
  hold(kernel, o, 0, 0, 0);
  // the force without lateral set
  const fn = trial[HELD_N]!;
  const f1 = trial[HELD_T1]!;
  const f2 = trial[HELD_T2]!;
  let lambda = 0;
  let dn = 0;
  let d1 = 0;
  let d2 = 0;
  for (let turn = 0; turn <= MAX_DIRECTIONS; turn++) {
    const axial = heldAxial(trial);
    const ln = trial[HELD_N]! - axial * trial[STRUT_N]!;
    const l1 = trial[HELD_T1]! - axial * trial[STRUT_T1]!;
    const l2 = trial[HELD_T2]! - axial * trial[STRUT_T2]!;
    const lateral = Math.sqrt(ln * ln + l1 * l1 + l2 * l2);
    if (turn === 0 ? lateral <= limit * (1 + LATERAL_SHARE) : ln * dn + l1 * d1 + l2 * d2 >= ALIGNED * lateral) {
      return lambda;
    }
    // the new direction is that of f + k w, which a set along it would leave unchanged; that of f itself would swing to and fro
    const held = lambda * lateralStiffness(trial, dn, d1, d2);
    dn = ln + held * dn;
    d1 = l1 + held * d1;
    d2 = l2 + held * d2;
    const length = Math.sqrt(dn * dn + d1 * d1 + d2 * d2);
    dn /= length;
    d1 /= length;
    d2 /= length;
    const guess =
      turn > 0 ? lambda : Math.max(feet[o + LAST_SET]!, (lateral - limit) / lateralStiffness(trial, dn, d1, d2));
    const over = fn * dn + f1 * d1 + f2 * d2 - limit;
    lambda = lateralRoot(kernel, o, limit, over, left, guess, dn, d1, d2);
    feet[o + LAST_SET] = lambda;
  }
  found[UNSETTLED] = found[UNSETTLED]! + 1;
  return lambda;
}

/** Of a foot that sticks, along a direction across the strut [N/m]; a foot that slides or crushes is softer. */
function lateralStiffness(trial: Float64Array, dn: number, d1: number, d2: number): number {
  return trial[STIFF_N]! * dn * dn + trial[STIFF_T]! * (d1 * d1 + d2 * d2);
}

/** Lateral force along a direction across the strut, after a set `lambda` in it, less the limit [N]. */
function lateralMiss(
  kernel: TouchdownKernel,
  o: number,
  limit: number,
  lambda: number,
  dn: number,
  d1: number,
  d2: number,
): number {
  const { trial } = kernel;
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
  dn: number,
  d1: number,
  d2: number,
): number {
  const { trial, found } = kernel;
  const close = LATERAL_SHARE * limit;
  let lambda = Math.min(guess, left);
  let miss = lateralMiss(kernel, o, limit, lambda, dn, d1, d2);
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
    const stiffness = lateralStiffness(trial, dn, d1, d2);
    while (miss > 0) {
      if (lambda >= left) return left;
      low = lambda;
      over = miss;
      lambda = Math.min(left, lambda + Math.max(miss / stiffness, lambda / 2));
      miss = lateralMiss(kernel, o, limit, lambda, dn, d1, d2);
      if (Math.abs(miss) <= close) return lambda;
    }
    high = lambda;
    under = miss;
  }
  let side = 0;
  for (let turn = 0; turn < MAX_ROOT_TURNS; turn++) {
    lambda = (low * under - high * over) / (under - over);
    miss = lateralMiss(kernel, o, limit, lambda, dn, d1, d2);
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

function heldAxial(trial: Float64Array): number {
  return trial[HELD_N]! * trial[STRUT_N]! + trial[HELD_T1]! * trial[STRUT_T1]! + trial[HELD_T2]! * trial[STRUT_T2]!;
}

/** Books stroke and lateral set and their work. True when this was the end of the last stage. */
function bookLeg(kernel: TouchdownKernel, o: number, lateral: number): boolean {
  const { feet, trial, found } = kernel;
  if (lateral > 0) {
    const force = lateralForce(trial);
    found[CRUSH_WORK] = found[CRUSH_WORK]! + lateral * force;
    feet[o + LATERAL] = feet[o + LATERAL]! + lateral;
    if (feet[o + LATERAL]! >= feet[o + LATERAL_END]!) feet[o + SECONDARY] = Infinity;
  }
  let ds = trial[DS]!;
  while (ds > 0 && feet[o + CRUSH]! < Infinity) {
    const part = Math.min(ds, feet[o + STAGE_END]! - feet[o + STROKE]!);
    found[CRUSH_WORK] = found[CRUSH_WORK]! + feet[o + CRUSH]! * part;
    ds -= part;
    if (part + feet[o + STROKE]! < feet[o + STAGE_END]!) {
      feet[o + STROKE] = feet[o + STROKE]! + part;
      return false;
    }
    feet[o + STROKE] = feet[o + STAGE_END]!;
    nextStage(kernel, o);
    if (feet[o + CRUSH] === Infinity) return true;
  }
  return false;
}

function lateralForce(trial: Float64Array): number {
  const axial = heldAxial(trial);
  const n = trial[HELD_N]! - axial * trial[STRUT_N]!;
  const t1 = trial[HELD_T1]! - axial * trial[STRUT_T1]!;
  const t2 = trial[HELD_T2]! - axial * trial[STRUT_T2]!;
  return Math.sqrt(n * n + t1 * t1 + t2 * t2);
}

/** Books sinkage, elastic approach, slide and their work. */
function bookGround(kernel: TouchdownKernel, o: number): void {
  const { feet, trial, found, run } = kernel;
  const kn = trial[STIFF_N]!;
  const kt = trial[STIFF_T]!;
  const normal = trial[HELD_N]!;
  const sank = trial[SANK]!;
  if (sank > 0) {
    feet[o + SINKAGE] = feet[o + SINKAGE]! + sank;
    feet[o + LEVEL] = feet[o + LEVEL]! - sank;
    if (run[SOIL_EXPONENT]! > 0) {
      feet[o + BEARING] = bekkerForce(feet[o + SOIL_COEFFICIENT]!, run[SOIL_EXPONENT]!, feet[o + SINKAGE]!);
    }
    found[SOIL_WORK] = found[SOIL_WORK]! + normal * sank;
  }
  const slip1 = (trial[TRIAL_T1]! - trial[HELD_T1]!) / kt - trial[SHIFT_T1]!;
  const slip2 = (trial[TRIAL_T2]! - trial[HELD_T2]!) / kt - trial[SHIFT_T2]!;
  feet[o + SLIDE] = feet[o + SLIDE]! + Math.sqrt(slip1 * slip1 + slip2 * slip2);
  found[FRICTION_WORK] = found[FRICTION_WORK]! + (trial[HELD_T1]! * slip1 + trial[HELD_T2]! * slip2);
  // an unloaded pad keeps the depth that its place gives it
  const pressed = normal > 0 ? normal : trial[TRIAL_N]! - kn * trial[SHIFT_N]!;
  const unBefore = feet[o + UN]!;
  const u1Before = feet[o + U1]!;
  const u2Before = feet[o + U2]!;
  const un = (pressed + trial[DASH_N]! * unBefore) / kn;
  const u1 = (trial[HELD_T1]! + trial[DASH_T]! * u1Before) / kt;
  const u2 = (trial[HELD_T2]! + trial[DASH_T]! * u2Before) / kt;
  const [dn, d1, d2] = [un - unBefore, u1 - u1Before, u2 - u2Before];
  found[DAMPING_WORK] = found[DAMPING_WORK]! + trial[DASH_N]! * dn * dn + trial[DASH_T]! * (d1 * d1 + d2 * d2);
  feet[o + UN] = un;
  feet[o + U1] = u1;
  feet[o + U2] = u2;
}
