/**
 * Plastic return of one foot: crush, lateral set, sinkage and slip in one implicit step of perfect plasticity [SH1998] ch. 3.
 * The law and its derivation stand in README.md, "Return mapping".
 */
import type { TouchdownKernel } from './kernel.ts';
import {
  ANCHOR1,
  ANCHOR2,
  BEARING,
  BOTTOMED,
  CN,
  CRUSH,
  CRUSH_WORK,
  CT,
  FRICTION,
  FRICTION_WORK,
  HELD_N,
  HELD_T1,
  HELD_T2,
  KN,
  KT,
  LATERAL,
  LATERAL_END,
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
  STAGE_END,
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

/** Forces agree with their limits to this share [-]: far above rounding, far below any measurement. */
const FORCE_SHARE = 1e-10;
/** The lateral limit, whose direction turns while it is approached [-]. */
const LATERAL_SHARE = 1e-6;
const MAX_AXIAL = 60;
const MAX_LATERAL = 60;
/** A strut flatter to the ground than this does not crush, for its crush would not unload the pad [-]. */
const LEAST_NORMAL_SHARE = 1 / 64;
/** A sliding foot yields more softly than a sticking one; its slope is trusted down to this share [-]. */
const LEAST_SLOPE_SHARE = 1 / 64;

/**
 * Brings a trial force inside all limits and books the permanent deformation of the foot at offset `o`, whose unloaded pad
 * stands at surface coordinates at1, at2.
 *
 * In kernel.trial: TRIAL_* and STRUT_*. Out: the permitted force in HELD_*, the permanent shift of the pad in SHIFT_*; stroke,
 * sinkage, elastic approach, anchor and work are updated. The place of the pad in the body is left to the caller.
 */
export function returnPlastic(kernel: TouchdownKernel, o: number, at1: number, at2: number): void {
  const { feet, trial } = kernel;
  const wasBottomed = feet[o + BOTTOMED]!;
  trial[SHIFT_N] = 0;
  trial[SHIFT_T1] = 0;
  trial[SHIFT_T2] = 0;
  crushAxially(kernel, o);
  if (feet[o + SECONDARY]! < Infinity) yieldSideways(kernel, o);
  book(kernel, o);
  if (feet[o + BOTTOMED] !== wasBottomed) trial[SHIFT_N] += restiffen(feet, o);
  feet[o + ANCHOR1] = at1 + trial[SHIFT_T1] + feet[o + U1]!;
  feet[o + ANCHOR2] = at2 + trial[SHIFT_T2] + feet[o + U2]!;
}

/** Soil and friction in closed form: TRIAL_* to HELD_*, the strut left out. */
function holdGround(kernel: TouchdownKernel, o: number): void {
  const { feet, trial, run } = kernel;
  const pressed = trial[TRIAL_N]!;
  let normal = pressed > 0 ? pressed : 0;
  let sank = 0;
  if (normal > feet[o + BEARING]!) {
    const stiffness = feet[o + KN]! + feet[o + CN]!;
    sank = furtherSinkage(normal, stiffness, feet[o + SOIL_COEFFICIENT]!, run[SOIL_EXPONENT]!, feet[o + SINKAGE]!);
    normal -= stiffness * sank;
  }
  const t1 = trial[TRIAL_T1]!;
  const t2 = trial[TRIAL_T2]!;
  const across = Math.sqrt(t1 * t1 + t2 * t2);
  const limit = run[FRICTION]! * normal;
  const share = across > limit ? limit / across : 1;
  trial[SANK] = sank;
  trial[HELD_N] = normal;
  trial[HELD_T1] = t1 * share;
  trial[HELD_T2] = t2 * share;
}

function axialForce(trial: Float64Array): number {
  return trial[HELD_N]! * trial[STRUT_N]! + trial[HELD_T1]! * trial[STRUT_T1]! + trial[HELD_T2]! * trial[STRUT_T2]!;
}

/** Moves the unloaded pad by a permanent shift: the trial force falls by stiffness times shift. */
function shiftPad(kernel: TouchdownKernel, o: number, n: number, t1: number, t2: number): void {
  const { feet, trial } = kernel;
  const kt = feet[o + KT]! + feet[o + CT]!;
  trial[TRIAL_N] = trial[TRIAL_N]! - (feet[o + KN]! + feet[o + CN]!) * n;
  trial[TRIAL_T1] = trial[TRIAL_T1]! - kt * t1;
  trial[TRIAL_T2] = trial[TRIAL_T2]! - kt * t2;
  trial[SHIFT_N] = trial[SHIFT_N]! + n;
  trial[SHIFT_T1] = trial[SHIFT_T1]! + t1;
  trial[SHIFT_T2] = trial[SHIFT_T2]! + t2;
}

function shiftAlongStrut(kernel: TouchdownKernel, o: number, ds: number): void {
  const { trial } = kernel;
  shiftPad(kernel, o, ds * trial[STRUT_N]!, ds * trial[STRUT_T1]!, ds * trial[STRUT_T2]!);
}

/** Crushes the strut along its axis, through as many stages as it takes. */
function crushAxially(kernel: TouchdownKernel, o: number): void {
  const { feet, trial, found } = kernel;
  holdGround(kernel, o);
  if (trial[STRUT_N]! < LEAST_NORMAL_SHARE) return;
  for (;;) {
    const limit = feet[o + CRUSH]!;
    if (!(axialForce(trial) > limit * (1 + FORCE_SHARE))) return;
    const left = Math.max(0, feet[o + STAGE_END]! - feet[o + STROKE]!);
    const wanted = crushRoot(kernel, o, limit);
    const ds = Math.min(wanted, left);
    shiftAlongStrut(kernel, o, ds);
    holdGround(kernel, o);
    feet[o + STROKE] = feet[o + STROKE]! + ds;
    found[CRUSH_WORK] = found[CRUSH_WORK]! + limit * ds;
    if (wanted < left) return;
    nextStage(kernel, o);
  }
}

/**
 * Shortening at which the axial load equals `limit`: false position (Illinois) between 0, where the load is above it, and
 * N / (k a_n), where the pad is unloaded; first guess the closed form of a foot that sticks and does not sink. Leaves the
 * trial force as it was.
 */
function crushRoot(kernel: TouchdownKernel, o: number, limit: number): number {
  const { feet, trial } = kernel;
  const an = trial[STRUT_N]!;
  const kn = feet[o + KN]! + feet[o + CN]!;
  const kt = feet[o + KT]! + feet[o + CT]!;
  let low = 0;
  let over = axialForce(trial) - limit;
  let high = trial[TRIAL_N]! / (kn * an);
  let under = -limit;
  let side = 0;
  let ds = over / (kn * an * an + kt * (1 - an * an));
  if (!(ds < high)) ds = (low * under - high * over) / (under - over);
  for (let turn = 0; turn < MAX_AXIAL; turn++) {
    shiftAlongStrut(kernel, o, ds);
    holdGround(kernel, o);
    const miss = axialForce(trial) - limit;
    shiftAlongStrut(kernel, o, -ds);
    if (Math.abs(miss) <= FORCE_SHARE * limit) return ds;
    if (miss > 0) {
      low = ds;
      over = miss;
      if (side === 1) under /= 2;
      side = 1;
    } else {
      high = ds;
      under = miss;
      if (side === -1) over /= 2;
      side = -1;
    }
    ds = (low * under - high * over) / (under - over);
  }
  kernel.found[UNSETTLED] = kernel.found[UNSETTLED]! + 1;
  return ds;
}

/**
 * Yields the secondary strut across the primary until the lateral force is at its limit, crushing the primary again after each
 * turn. The slope of a foot that also slides or crushes is learnt from the turn before (secant).
 */
function yieldSideways(kernel: TouchdownKernel, o: number): void {
  const { feet, trial, found } = kernel;
  const kn = feet[o + KN]! + feet[o + CN]!;
  const kt = feet[o + KT]! + feet[o + CT]!;
  let lastExcess = 0;
  let lastFlow = 0;
  for (let turn = 0; turn < MAX_LATERAL; turn++) {
    const axial = axialForce(trial);
    const ln = trial[HELD_N]! - axial * trial[STRUT_N]!;
    const l1 = trial[HELD_T1]! - axial * trial[STRUT_T1]!;
    const l2 = trial[HELD_T2]! - axial * trial[STRUT_T2]!;
    const lateral = Math.sqrt(ln * ln + l1 * l1 + l2 * l2);
    const limit = feet[o + SECONDARY]!;
    const excess = lateral - limit;
    if (!(excess > LATERAL_SHARE * limit)) return;
    const sticking = (kn * ln * ln + kt * (l1 * l1 + l2 * l2)) / (lateral * lateral);
    const learnt = lastFlow > 0 ? (lastExcess - excess) / lastFlow : sticking;
    const wanted = excess / Math.min(sticking, Math.max(learnt, LEAST_SLOPE_SHARE * sticking));
    const left = Math.max(0, feet[o + LATERAL_END]! - feet[o + LATERAL]!);
    const flow = Math.min(wanted, left);
    if (flow < wanted) feet[o + SECONDARY] = Infinity;
    const share = flow / lateral;
    feet[o + LATERAL] = feet[o + LATERAL]! + flow;
    found[CRUSH_WORK] = found[CRUSH_WORK]! + flow * limit;
    shiftPad(kernel, o, ln * share, l1 * share, l2 * share);
    crushAxially(kernel, o);
    lastExcess = excess;
    lastFlow = flow;
  }
  found[UNSETTLED] = found[UNSETTLED]! + 1;
}

/** Writes sinkage, elastic approach, slide and work of the settled foot. */
function book(kernel: TouchdownKernel, o: number): void {
  const { feet, trial, found, run } = kernel;
  const kn = feet[o + KN]! + feet[o + CN]!;
  const kt = feet[o + KT]! + feet[o + CT]!;
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
  const slip1 = (trial[TRIAL_T1]! - trial[HELD_T1]!) / kt;
  const slip2 = (trial[TRIAL_T2]! - trial[HELD_T2]!) / kt;
  feet[o + SLIDE] = feet[o + SLIDE]! + Math.sqrt(slip1 * slip1 + slip2 * slip2);
  found[FRICTION_WORK] = found[FRICTION_WORK]! + (trial[HELD_T1]! * slip1 + trial[HELD_T2]! * slip2);
  // an unloaded pad keeps the depth that its place gives it
  feet[o + UN] = ((normal > 0 ? normal : trial[TRIAL_N]!) + feet[o + CN]! * feet[o + UN]!) / kn;
  feet[o + U1] = (trial[HELD_T1]! + feet[o + CT]! * feet[o + U1]!) / kt;
  feet[o + U2] = (trial[HELD_T2]! + feet[o + CT]! * feet[o + U2]!) / kt;
}
