/**
 * Plastic return of one foot: crush, lateral set, sinkage and slip in one implicit step of perfect plasticity [SH1998] ch. 3.
 * The law and its derivation stand in README.md, "Return mapping".
 */
import { hold } from './crushReturn.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  FOOT_ANCHOR1,
  FOOT_ANCHOR2,
  FOOT_BEARING,
  FOOT_BOTTOMED,
  FOOT_CRUSH,
  FOUND_CRUSH_WORK,
  FOUND_DAMPING_WORK,
  TRIAL_DASH_N,
  TRIAL_DASH_T,
  TRIAL_DS,
  FOUND_FRICTION_WORK,
  TRIAL_HELD_N,
  TRIAL_HELD_T1,
  TRIAL_HELD_T2,
  FOOT_LATERAL,
  FOOT_LATERAL_END,
  FOOT_LEVEL,
  TRIAL_SANK,
  FOOT_SECONDARY,
  TRIAL_SHIFT_N,
  TRIAL_SHIFT_T1,
  TRIAL_SHIFT_T2,
  FOOT_SINKAGE,
  FOOT_SLIDE,
  FOOT_SOIL_COEFFICIENT,
  RUN_SOIL_EXPONENT,
  FOUND_SOIL_WORK,
  FOOT_STAGE_END,
  TRIAL_STIFF_N,
  TRIAL_STIFF_T,
  FOOT_STROKE,
  TRIAL_N,
  TRIAL_T1,
  TRIAL_T2,
  FOOT_U1,
  FOOT_U2,
  FOOT_UN,
} from './layout.ts';
import { lateralForce } from './lateralDirection.ts';
import { yieldSideways } from './lateralReturn.ts';
import { nextStage, restiffen } from './legStages.ts';
import { bekkerForce } from './soil.ts';

/**
 * Brings a trial force inside all limits and books the permanent deformation of the foot at offset `o`, whose unloaded pad
 * stands at surface coordinates at1, at2.
 *
 * In kernel.trial: TRIAL_*, STRUT_*, STIFF_* and DASH_*. Out: the permitted force in HELD_*, the permanent shift of the pad in
 * SHIFT_*; stroke, sinkage, elastic approach, anchor and work are updated. The place of the pad in the body is left to the caller.
 */
export function returnPlastic(kernel: TouchdownKernel, o: number, at1: number, at2: number): void {
  const { feet, trial } = kernel;
  trial[TRIAL_DS] = 0;
  let lateral = 0;
  if (feet[o + FOOT_SECONDARY]! < Infinity) lateral = yieldSideways(kernel, o);
  else hold(kernel, o, 0, 0, 0);
  const bottoms = bookLeg(kernel, o, lateral);
  bookGround(kernel, o);
  if (bottoms) trial[TRIAL_SHIFT_N] = trial[TRIAL_SHIFT_N]! + restiffen(kernel, o);
  feet[o + FOOT_ANCHOR1] = at1 + trial[TRIAL_SHIFT_T1]! + feet[o + FOOT_U1]!;
  feet[o + FOOT_ANCHOR2] = at2 + trial[TRIAL_SHIFT_T2]! + feet[o + FOOT_U2]!;
}

/** Books stroke and lateral set and their work. True when this was the end of the last stage. */
function bookLeg(kernel: TouchdownKernel, o: number, lateral: number): boolean {
  const { feet, trial, found } = kernel;
  if (lateral > 0) {
    const force = lateralForce(trial);
    found[FOUND_CRUSH_WORK] = found[FOUND_CRUSH_WORK]! + lateral * force;
    feet[o + FOOT_LATERAL] = feet[o + FOOT_LATERAL]! + lateral;
    if (feet[o + FOOT_LATERAL]! >= feet[o + FOOT_LATERAL_END]!) feet[o + FOOT_SECONDARY] = Infinity;
  }
  let ds = trial[TRIAL_DS]!;
  while (ds > 0 && feet[o + FOOT_CRUSH]! < Infinity) {
    const part = Math.min(ds, feet[o + FOOT_STAGE_END]! - feet[o + FOOT_STROKE]!);
    found[FOUND_CRUSH_WORK] = found[FOUND_CRUSH_WORK]! + feet[o + FOOT_CRUSH]! * part;
    ds -= part;
    if (part + feet[o + FOOT_STROKE]! < feet[o + FOOT_STAGE_END]!) {
      feet[o + FOOT_STROKE] = feet[o + FOOT_STROKE]! + part;
      return false;
    }
    feet[o + FOOT_STROKE] = feet[o + FOOT_STAGE_END]!;
    nextStage(kernel, o);
    if (feet[o + FOOT_CRUSH] === Infinity) return feet[o + FOOT_BOTTOMED]! > 0;
  }
  return false;
}

/** Books sinkage, elastic approach, slide and their work. */
function bookGround(kernel: TouchdownKernel, o: number): void {
  const { feet, trial, found, run } = kernel;
  const kn = trial[TRIAL_STIFF_N]!;
  const kt = trial[TRIAL_STIFF_T]!;
  const normal = trial[TRIAL_HELD_N]!;
  const sank = trial[TRIAL_SANK]!;
  if (sank > 0) {
    feet[o + FOOT_SINKAGE] = feet[o + FOOT_SINKAGE]! + sank;
    feet[o + FOOT_LEVEL] = feet[o + FOOT_LEVEL]! - sank;
    if (run[RUN_SOIL_EXPONENT]! > 0) {
      feet[o + FOOT_BEARING] = bekkerForce(
        feet[o + FOOT_SOIL_COEFFICIENT]!,
        run[RUN_SOIL_EXPONENT]!,
        feet[o + FOOT_SINKAGE]!,
      );
    }
    found[FOUND_SOIL_WORK] = found[FOUND_SOIL_WORK]! + normal * sank;
  }
  const slip1 = (trial[TRIAL_T1]! - trial[TRIAL_HELD_T1]!) / kt - trial[TRIAL_SHIFT_T1]!;
  const slip2 = (trial[TRIAL_T2]! - trial[TRIAL_HELD_T2]!) / kt - trial[TRIAL_SHIFT_T2]!;
  feet[o + FOOT_SLIDE] = feet[o + FOOT_SLIDE]! + Math.sqrt(slip1 * slip1 + slip2 * slip2);
  found[FOUND_FRICTION_WORK] =
    found[FOUND_FRICTION_WORK]! + (trial[TRIAL_HELD_T1]! * slip1 + trial[TRIAL_HELD_T2]! * slip2);
  // an unloaded pad keeps the depth that its place gives it
  const pressed = normal > 0 ? normal : trial[TRIAL_N]! - kn * trial[TRIAL_SHIFT_N]!;
  const unBefore = feet[o + FOOT_UN]!;
  const u1Before = feet[o + FOOT_U1]!;
  const u2Before = feet[o + FOOT_U2]!;
  const un = (pressed + trial[TRIAL_DASH_N]! * unBefore) / kn;
  const u1 = (trial[TRIAL_HELD_T1]! + trial[TRIAL_DASH_T]! * u1Before) / kt;
  const u2 = (trial[TRIAL_HELD_T2]! + trial[TRIAL_DASH_T]! * u2Before) / kt;
  const [dn, d1, d2] = [un - unBefore, u1 - u1Before, u2 - u2Before];
  found[FOUND_DAMPING_WORK] =
    found[FOUND_DAMPING_WORK]! + trial[TRIAL_DASH_N]! * dn * dn + trial[TRIAL_DASH_T]! * (d1 * d1 + d2 * d2);
  feet[o + FOOT_UN] = un;
  feet[o + FOOT_U1] = u1;
  feet[o + FOOT_U2] = u2;
}
