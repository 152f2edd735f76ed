/**
 * Plastic return of one foot: crush, lateral set, sinkage and slip in one implicit step of perfect plasticity [SH1998] ch. 3.
 * The law and its derivation stand in README.md, "Return mapping".
 */
import { hold } from './crushReturn.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  ANCHOR1,
  ANCHOR2,
  BEARING,
  BOTTOMED,
  CRUSH,
  CRUSH_WORK,
  DAMPING_WORK,
  DASH_N,
  DASH_T,
  DS,
  FRICTION_WORK,
  HELD_N,
  HELD_T1,
  HELD_T2,
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
  STIFF_N,
  STIFF_T,
  STROKE,
  TRIAL_N,
  TRIAL_T1,
  TRIAL_T2,
  U1,
  U2,
  UN,
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
    if (feet[o + CRUSH] === Infinity) return feet[o + BOTTOMED]! > 0;
  }
  return false;
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
