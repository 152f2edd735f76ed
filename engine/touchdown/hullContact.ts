import { addImpulse, addReleaseImpulse, onsetWeight } from './edgeImpulse.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  RUN_FRICTION,
  FOUND_FRICTION_WORK,
  FOUND_DAMPING_WORK,
  HULL_ANCHOR1,
  HULL_ANCHOR2,
  HULL_NORMAL_X,
  HULL_NORMAL_Z,
  HULL_SEGMENT,
  HULL_TOUCHING,
  HULL_U1,
  HULL_U2,
  HULL_UN,
  RUN_HULL_C,
  FOUND_HULL_CONTACTS,
  HULL_FORCE_SIZE,
  RUN_HULL_K,
  HULL_SIZE,
  RUN_INVERSE_IX,
  BODY_LX,
  BODY_PX,
  BODY_R11,
  RUN_STEP,
  HULL_SUM_FX,
  HULL_SUM_MX,
  BODY_VX,
} from './layout.ts';
import { TOUCH_ARC, TOUCH_HEIGHT, TOUCH_NX, TOUCH_NZ, TOUCH_SEGMENT, touchProfile } from './profileGround.ts';

/**
 * Forces of the ground on the hull points, summed into kernel.hullForce: force, and moment about the center of mass, ground frame.
 *
 *   N = k u_n + c u_n',  T = k u_t + c u_t' kept inside |T| <= mu N by moving the anchor          as for a footpad, README.md
 *
 * Runs only in batches in which a hull point may reach the ground. True when one met or left it within the step: then kernel.impulse was added to.
 */
export function hullContact(kernel: TouchdownKernel): boolean {
  const { body, hull, run, found, hullForce, impulse, touch, profile } = kernel;
  for (let i = 0; i < HULL_FORCE_SIZE; i++) hullForce[i] = 0;
  const k = run[RUN_HULL_K]!;
  let contacts = 0;
  let edges = false;
  for (let o = 0; o < hull.length; o += HULL_SIZE) {
    const bx = hull[o]!;
    const by = hull[o + 1]!;
    const bz = hull[o + 2]!;
    const rx = body[BODY_R11]! * bx + body[BODY_R11 + 1]! * by + body[BODY_R11 + 2]! * bz;
    const ry = body[BODY_R11 + 3]! * bx + body[BODY_R11 + 4]! * by + body[BODY_R11 + 5]! * bz;
    const rz = body[BODY_R11 + 6]! * bx + body[BODY_R11 + 7]! * by + body[BODY_R11 + 8]! * bz;
    let height = body[BODY_PX + 2]! + rz;
    let at1 = body[BODY_PX]! + rx;
    const at2 = body[BODY_PX + 1]! + ry;
    let nx = 0;
    let nz = 1;
    let segment = 0;
    if (profile !== undefined) {
      touchProfile(profile, at1, height, touch);
      height = touch[TOUCH_HEIGHT]!;
      at1 = touch[TOUCH_ARC]!;
      nx = touch[TOUCH_NX]!;
      nz = touch[TOUCH_NZ]!;
      segment = touch[TOUCH_SEGMENT]!;
    }
    const un = -height;
    let before = hull[o + HULL_UN]!;
    let c = run[RUN_HULL_C]!;
    let share = 0;
    if (un > 0 && hull[o + HULL_TOUCHING] === 0) {
      share = before < 0 ? un / (un - before) : 0;
      meet(kernel, o, at1, at2, segment, nx, nz, share * run[RUN_STEP]!, rx, ry, rz);
      before = 0;
      // the dashpot of a new contact has worked since then, not for the whole step
      if (share > 0) c /= share;
    }
    hull[o + HULL_UN] = un;
    const normal = k * un + c * (un - before);
    if (un <= 0 || normal <= 0) {
      if (hull[o + HULL_TOUCHING]! > 0) {
        const force1 = k * hull[o + HULL_U1]!;
        const force2 = k * hull[o + HULL_U2]!;
        addReleaseImpulse(impulse, k, c, before, un, force1, force2, nx, nz, rx, ry, rz);
        edges = true;
      }
      release(kernel, o, un, un - before);
      hull[o + HULL_ANCHOR1] = at1;
      hull[o + HULL_ANCHOR2] = at2;
      continue;
    }
    contacts++;
    if (profile !== undefined && share === 0) {
      if (Math.abs(hull[o + HULL_SEGMENT]! - segment) >= 1) hull[o + HULL_ANCHOR1] = at1 + hull[o + HULL_U1]!;
      else
        hull[o + HULL_ANCHOR1] =
          hull[o + HULL_ANCHOR1]! + height * (hull[o + HULL_NORMAL_X]! * nz - hull[o + HULL_NORMAL_Z]! * nx);
    }
    hull[o + HULL_SEGMENT] = segment;
    hull[o + HULL_NORMAL_X] = nx;
    hull[o + HULL_NORMAL_Z] = nz;
    const before1 = hull[o + HULL_U1]!;
    const before2 = hull[o + HULL_U2]!;
    let u1 = hull[o + HULL_ANCHOR1]! - at1;
    let u2 = hull[o + HULL_ANCHOR2]! - at2;
    let force1 = k * u1 + c * (u1 - before1);
    let force2 = k * u2 + c * (u2 - before2);
    const across = Math.sqrt(force1 * force1 + force2 * force2);
    const limit = run[RUN_FRICTION]! * normal;
    if (across > limit) {
      force1 *= limit / across;
      force2 *= limit / across;
      u1 = (force1 + c * before1) / (k + c);
      u2 = (force2 + c * before2) / (k + c);
      hull[o + HULL_ANCHOR1] = at1 + u1;
      hull[o + HULL_ANCHOR2] = at2 + u2;
      found[FOUND_FRICTION_WORK] = found[FOUND_FRICTION_WORK]! + (limit * (across - limit)) / (k + c);
    }
    hull[o + HULL_U1] = u1;
    hull[o + HULL_U2] = u2;
    const dn = un - before;
    const d1 = u1 - before1;
    const d2 = u2 - before2;
    found[FOUND_DAMPING_WORK] = found[FOUND_DAMPING_WORK]! + c * (dn * dn + d1 * d1 + d2 * d2);
    const fx = nz * force1 + nx * normal;
    const fz = nz * normal - nx * force1;
    hullForce[HULL_SUM_FX] = hullForce[HULL_SUM_FX]! + fx;
    hullForce[HULL_SUM_FX + 1] = hullForce[HULL_SUM_FX + 1]! + force2;
    hullForce[HULL_SUM_FX + 2] = hullForce[HULL_SUM_FX + 2]! + fz;
    hullForce[HULL_SUM_MX] = hullForce[HULL_SUM_MX]! + ry * fz - rz * force2;
    hullForce[HULL_SUM_MX + 1] = hullForce[HULL_SUM_MX + 1]! + rz * fx - rx * fz;
    hullForce[HULL_SUM_MX + 2] = hullForce[HULL_SUM_MX + 2]! + rx * force2 - ry * fx;
    if (share > 0) {
      addImpulse(impulse, onsetWeight(share, c * un, normal, normal), fx, force2, fz, rx, ry, rz);
      edges = true;
    }
  }
  found[FOUND_HULL_CONTACTS] = contacts;
  return edges;
}

/** First step of a contact, `since` seconds old: the anchor is where the point crossed the surface. */
function meet(
  kernel: TouchdownKernel,
  o: number,
  at1: number,
  at2: number,
  segment: number,
  nx: number,
  nz: number,
  since: number,
  rx: number,
  ry: number,
  rz: number,
): void {
  const { body, hull, run } = kernel;
  const wx = body[BODY_LX]! * run[RUN_INVERSE_IX]!;
  const wy = body[BODY_LX + 1]! * run[RUN_INVERSE_IX + 1]!;
  const wz = body[BODY_LX + 2]! * run[RUN_INVERSE_IX + 2]!;
  const ox = body[BODY_R11]! * wx + body[BODY_R11 + 1]! * wy + body[BODY_R11 + 2]! * wz;
  const oy = body[BODY_R11 + 3]! * wx + body[BODY_R11 + 4]! * wy + body[BODY_R11 + 5]! * wz;
  const oz = body[BODY_R11 + 6]! * wx + body[BODY_R11 + 7]! * wy + body[BODY_R11 + 8]! * wz;
  const speedX = body[BODY_VX]! + oy * rz - oz * ry;
  const speedY = body[BODY_VX + 1]! + oz * rx - ox * rz;
  const speedZ = body[BODY_VX + 2]! + ox * ry - oy * rx;
  hull[o + HULL_ANCHOR1] = at1 - (nz * speedX - nx * speedZ) * since;
  hull[o + HULL_ANCHOR2] = at2 - speedY * since;
  hull[o + HULL_U1] = 0;
  hull[o + HULL_U2] = 0;
  hull[o + HULL_TOUCHING] = 1;
  hull[o + HULL_SEGMENT] = segment;
}

/** A point off the ground (depth at most 0), or one that rebounds faster than it springs back; books what its springs lose. */
function release(kernel: TouchdownKernel, o: number, depth: number, rise: number): void {
  const { hull, run, found } = kernel;
  const k = run[RUN_HULL_K]!;
  const u1 = hull[o + HULL_U1]!;
  const u2 = hull[o + HULL_U2]!;
  if (hull[o + HULL_TOUCHING]! > 0)
    found[FOUND_DAMPING_WORK] = found[FOUND_DAMPING_WORK]! + (k * (u1 * u1 + u2 * u2)) / 2;
  if (depth > 0) found[FOUND_DAMPING_WORK] = found[FOUND_DAMPING_WORK]! - k * depth * rise;
  else hull[o + HULL_TOUCHING] = 0;
  hull[o + HULL_U1] = 0;
  hull[o + HULL_U2] = 0;
}
