/**
 * The hot loop: a batch of steps of the rigid body on its feet. One long function on purpose: the body lives in local scalars, which
 * the compiler keeps in registers; arrays or objects for state and derivatives cost it two to three times the time. The contact of a foot as a
 * function of its own was tried: same bits, 31 % slower, 19 % where only feet near the ground are handed over. Derivations in README.md.
 */
import { addImpulse, addReleaseImpulse, onsetWeight } from './edgeImpulse.ts';
import { hullContact } from './hullContact.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  TRIAL_ACROSS,
  FOOT_ANCHOR1,
  FOOT_ANCHOR2,
  BODY_AX,
  RUN_AXIS_X,
  FOOT_BEARING,
  FOOT_CN,
  FOUND_CONTACTS,
  FOOT_CRUSH,
  FOOT_CT,
  FOUND_DAMPING_WORK,
  TRIAL_DASH_N,
  TRIAL_DASH_T,
  FOOT_SIZE,
  RUN_FRICTION,
  FOUND_FRICTION_WORK,
  FOOT_X,
  RUN_GX,
  TRIAL_HELD_N,
  TRIAL_HELD_T1,
  TRIAL_HELD_T2,
  FOUND_HIGHEST_UN,
  RUN_HOLD_X,
  RUN_HULL_ON,
  RUN_INVERSE_IX,
  RUN_INVERSE_MASS,
  FOOT_KN,
  FOOT_KT,
  RUN_LEDGER_ON,
  FOOT_LEVEL,
  FOOT_LOAD,
  BODY_LX,
  BODY_MX,
  FOOT_NORMAL_X,
  FOOT_NORMAL_Z,
  FOUND_PEAK_ACCELERATION,
  FOOT_PEAK_LOAD,
  BODY_PX,
  BODY_QW,
  BODY_R11,
  FOOT_SECONDARY,
  FOOT_SEGMENT,
  TRIAL_SHIFT_N,
  TRIAL_SHIFT_T1,
  TRIAL_SHIFT_T2,
  FOOT_SLIDE,
  FOUND_SLIPPED,
  RUN_STEP,
  TRIAL_STIFF_N,
  TRIAL_STIFF_T,
  FOOT_STRUT,
  TRIAL_STRUT_N,
  TRIAL_STRUT_T1,
  TRIAL_STRUT_T2,
  HULL_SUM_FX,
  HULL_SUM_MX,
  RUN_THRUST,
  RUN_THRUST_DECAY,
  RUN_THRUST_MOMENT,
  FOOT_TOUCHING,
  TRIAL_N,
  TRIAL_T1,
  TRIAL_T2,
  FOOT_U1,
  FOOT_U2,
  FOOT_UN,
  BODY_VX,
} from './layout.ts';
import { TOUCH_ARC, TOUCH_HEIGHT, TOUCH_NX, TOUCH_NZ, TOUCH_SEGMENT, touchProfile } from './profileGround.ts';
import { returnPlastic } from './returnPlastic.ts';

/** What a foot holds across the surface when it lifts off is lost [J]. */
function dropSlideEnergy(kernel: TouchdownKernel, o: number): void {
  const { feet, found } = kernel;
  const u1 = feet[o + FOOT_U1]!;
  const u2 = feet[o + FOOT_U2]!;
  found[FOUND_DAMPING_WORK] = found[FOUND_DAMPING_WORK]! + (feet[o + FOOT_KT]! * (u1 * u1 + u2 * u2)) / 2;
}

/** What a pad that leaves the ground has pressed too much. */
function releaseFoot(
  kernel: TouchdownKernel,
  o: number,
  un: number,
  nx: number,
  nz: number,
  rx: number,
  ry: number,
  rz: number,
): void {
  const { feet, impulse } = kernel;
  const kn = feet[o + FOOT_KN]!;
  const kt = feet[o + FOOT_KT]!;
  const force1 = kt * feet[o + FOOT_U1]!;
  const force2 = kt * feet[o + FOOT_U2]!;
  addReleaseImpulse(impulse, kn, feet[o + FOOT_CN]!, feet[o + FOOT_UN]!, un, force1, force2, nx, nz, rx, ry, rz);
}

/** Advances the run in `kernel` by `count` steps; with count 0, evaluates the forces at the present place. */
export function advance(kernel: TouchdownKernel, count: number): void {
  const { body, feet, run, found, trial, hullForce, impulse, touch, profile, feetEnd } = kernel;
  const h = run[RUN_STEP]!;
  const half = h / 2;
  const friction = run[RUN_FRICTION]!;
  const gx = run[RUN_GX]!;
  const gy = run[RUN_GX + 1]!;
  const gz = run[RUN_GX + 2]!;
  const inverseMass = run[RUN_INVERSE_MASS]!;
  // half the angle that a unit of angular momentum turns the body by in half a step, and in a whole one
  const turnX = (run[RUN_INVERSE_IX]! * h) / 4;
  const turnY = (run[RUN_INVERSE_IX + 1]! * h) / 4;
  const turnZ = (run[RUN_INVERSE_IX + 2]! * h) / 2;
  const axisX = run[RUN_AXIS_X]!;
  const axisY = run[RUN_AXIS_X + 1]!;
  const axisZ = run[RUN_AXIS_X + 2]!;
  const holdX = run[RUN_HOLD_X]!;
  const holdY = run[RUN_HOLD_X + 1]!;
  const holdZ = run[RUN_HOLD_X + 2]!;
  const decay = run[RUN_THRUST_DECAY]!;
  const hullOn = run[RUN_HULL_ON]! > 0;
  const ledger = run[RUN_LEDGER_ON]! > 0;
  const flat = profile === undefined;

  let thrust = run[RUN_THRUST]!;
  let px = body[BODY_PX]!;
  let py = body[BODY_PX + 1]!;
  let pz = body[BODY_PX + 2]!;
  let vx = body[BODY_VX]!;
  let vy = body[BODY_VX + 1]!;
  let vz = body[BODY_VX + 2]!;
  let qw = body[BODY_QW]!;
  let qx = body[BODY_QW + 1]!;
  let qy = body[BODY_QW + 2]!;
  let qz = body[BODY_QW + 3]!;
  let lx = body[BODY_LX]!;
  let ly = body[BODY_LX + 1]!;
  let lz = body[BODY_LX + 2]!;
  let ax = body[BODY_AX]!;
  let ay = body[BODY_AX + 1]!;
  let az = body[BODY_AX + 2]!;
  let mx = body[BODY_MX]!;
  let my = body[BODY_MX + 1]!;
  let mz = body[BODY_MX + 2]!;
  let r11 = 0;
  let r12 = 0;
  let r13 = 0;
  let r21 = 0;
  let r22 = 0;
  let r23 = 0;
  let r31 = 0;
  let r32 = 0;
  let r33 = 0;
  let contacts = 0;
  let slipped = 0;
  let highest = -Infinity;
  let peak = found[FOUND_PEAK_ACCELERATION]!;

  const moving = count > 0;
  for (let n = moving ? 0 : -1; n < count; n++) {
    if (moving) {
      // kick
      vx += ax * half;
      vy += ay * half;
      vz += az * half;
      lx += mx * half;
      ly += my * half;
      lz += mz * half;
      // drift
      px += vx * h;
      py += vy * h;
      pz += vz * h;
      // turn: X Y Z Y X, each by the rate L/I about its axis; t = tan of the half angle, quaternion scaled once
      // at the end; 2 / (1 + tt) by its series, right to t^6 < 1e-13 since no step turns by more than MAX_FLIGHT_TURN
      let t = lx * turnX;
      let tt = t * t;
      let u = 2 * tt * (1 - tt);
      let c = 1 - u;
      let s = t * (2 - u);
      let a = qw - qx * t;
      let b = qx + qw * t;
      let d = qy + qz * t;
      let e = qz - qy * t;
      let f = c * ly + s * lz;
      lz = c * lz - s * ly;
      ly = f;
      t = ly * turnY;
      tt = t * t;
      u = 2 * tt * (1 - tt);
      c = 1 - u;
      s = t * (2 - u);
      qw = a - d * t;
      qx = b - e * t;
      qy = d + a * t;
      qz = e + b * t;
      f = c * lx - s * lz;
      lz = c * lz + s * lx;
      lx = f;
      t = lz * turnZ;
      tt = t * t;
      u = 2 * tt * (1 - tt);
      c = 1 - u;
      s = t * (2 - u);
      a = qw - qz * t;
      b = qx + qy * t;
      d = qy - qx * t;
      e = qz + qw * t;
      f = c * lx + s * ly;
      ly = c * ly - s * lx;
      lx = f;
      t = ly * turnY;
      tt = t * t;
      u = 2 * tt * (1 - tt);
      c = 1 - u;
      s = t * (2 - u);
      qw = a - d * t;
      qx = b - e * t;
      qy = d + a * t;
      qz = e + b * t;
      f = c * lx - s * lz;
      lz = c * lz + s * lx;
      lx = f;
      t = lx * turnX;
      tt = t * t;
      u = 2 * tt * (1 - tt);
      c = 1 - u;
      s = t * (2 - u);
      a = qw - qx * t;
      b = qx + qw * t;
      d = qy + qz * t;
      e = qz - qy * t;
      f = c * ly + s * lz;
      lz = c * lz - s * ly;
      ly = f;
      s = 1 / Math.sqrt(a * a + b * b + d * d + e * e);
      qw = a * s;
      qx = b * s;
      qy = d * s;
      qz = e * s;
    }
    // rotation matrix
    const xx = qx * qx;
    const yy = qy * qy;
    const zz = qz * qz;
    r11 = 1 - 2 * (yy + zz);
    r12 = 2 * (qx * qy - qw * qz);
    r13 = 2 * (qx * qz + qw * qy);
    r21 = 2 * (qx * qy + qw * qz);
    r22 = 1 - 2 * (xx + zz);
    r23 = 2 * (qy * qz - qw * qx);
    r31 = 2 * (qx * qz - qw * qy);
    r32 = 2 * (qy * qz + qw * qx);
    r33 = 1 - 2 * (xx + yy);

    let fx = 0;
    let fy = 0;
    let fz = 0;
    let tx = 0;
    let ty = 0;
    let tz = 0;
    contacts = 0;
    highest = -Infinity;
    // impulses of pads and hull points that met or left the ground within the step
    let edges = false;

    for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
      const bx = feet[o + FOOT_X]!;
      const by = feet[o + FOOT_X + 1]!;
      const bz = feet[o + FOOT_X + 2]!;
      let rz = r31 * bx + r32 * by + r33 * bz;
      let height = pz + rz;
      let at1 = 0;
      let nx = 0;
      let nz = 1;
      let segment = 0;
      if (!flat) {
        touchProfile(profile, px + r11 * bx + r12 * by + r13 * bz, height, touch);
        height = touch[TOUCH_HEIGHT]!;
        at1 = touch[TOUCH_ARC]!;
        nx = touch[TOUCH_NX]!;
        nz = touch[TOUCH_NZ]!;
        segment = touch[TOUCH_SEGMENT]!;
      }
      const un = feet[o + FOOT_LEVEL]! - height;
      if (un > highest) highest = un;
      let unBefore = feet[o + FOOT_UN]!;
      if (un <= 0) {
        if (feet[o + FOOT_TOUCHING]! > 0) {
          const ax0 = r11 * bx + r12 * by + r13 * bz;
          const ay0 = r21 * bx + r22 * by + r23 * bz;
          releaseFoot(kernel, o, un, nx, nz, ax0, ay0, rz);
          edges = true;
          if (ledger) dropSlideEnergy(kernel, o);
        }
        feet[o + FOOT_UN] = un;
        feet[o + FOOT_TOUCHING] = 0;
        feet[o + FOOT_LOAD] = 0;
        continue;
      }
      let rx = r11 * bx + r12 * by + r13 * bz;
      let ry = r21 * bx + r22 * by + r23 * bz;
      if (flat) at1 = px + rx;
      const at2 = py + ry;
      let share = 0;
      if (feet[o + FOOT_TOUCHING] === 0) {
        // first step of a contact: the anchor is where the foot crossed the surface
        share = unBefore < 0 ? un / (un - unBefore) : 0;
        const since = share * h;
        const wx = lx * run[RUN_INVERSE_IX]!;
        const wy = ly * run[RUN_INVERSE_IX + 1]!;
        const wz = lz * run[RUN_INVERSE_IX + 2]!;
        const ox = r11 * wx + r12 * wy + r13 * wz;
        const oy = r21 * wx + r22 * wy + r23 * wz;
        const oz = r31 * wx + r32 * wy + r33 * wz;
        const speedX = vx + oy * rz - oz * ry;
        const speedZ = vz + ox * ry - oy * rx;
        feet[o + FOOT_ANCHOR1] = at1 - (nz * speedX - nx * speedZ) * since;
        feet[o + FOOT_ANCHOR2] = at2 - (vy + oz * rx - ox * rz) * since;
        feet[o + FOOT_U1] = 0;
        feet[o + FOOT_U2] = 0;
        feet[o + FOOT_UN] = 0;
        feet[o + FOOT_TOUCHING] = 1;
        feet[o + FOOT_SEGMENT] = segment;
        unBefore = 0;
      } else if (!flat) {
        // on a vertex the pad moves on a circle while the surface coordinate stands still; where that jumps the elastic slide is carried on
        if (Math.abs(feet[o + FOOT_SEGMENT]! - segment) >= 1) feet[o + FOOT_ANCHOR1] = at1 + feet[o + FOOT_U1]!;
        else
          feet[o + FOOT_ANCHOR1] =
            feet[o + FOOT_ANCHOR1]! + height * (feet[o + FOOT_NORMAL_X]! * nz - feet[o + FOOT_NORMAL_Z]! * nx);
        feet[o + FOOT_SEGMENT] = segment;
      }
      feet[o + FOOT_NORMAL_X] = nx;
      feet[o + FOOT_NORMAL_Z] = nz;
      contacts++;
      const kn = feet[o + FOOT_KN]!;
      const kt = feet[o + FOOT_KT]!;
      let cn = feet[o + FOOT_CN]!;
      let ct = feet[o + FOOT_CT]!;
      if (share > 0) {
        // the dashpot of a new contact has worked since then, not for the whole step
        cn /= share;
        ct /= share;
      }
      const u1 = feet[o + FOOT_ANCHOR1]! - at1;
      const u2 = feet[o + FOOT_ANCHOR2]! - at2;
      const u1Before = feet[o + FOOT_U1]!;
      const u2Before = feet[o + FOOT_U2]!;
      let normal = kn * un + cn * (un - unBefore);
      if (normal <= 0) {
        // rebounding faster than the leg extends: the pad is off the ground until it is pressed again
        releaseFoot(kernel, o, un, nx, nz, rx, ry, rz);
        edges = true;
        if (ledger) {
          found[FOUND_DAMPING_WORK] = found[FOUND_DAMPING_WORK]! - kn * un * (un - unBefore);
          dropSlideEnergy(kernel, o);
        }
        feet[o + FOOT_UN] = un;
        feet[o + FOOT_U1] = 0;
        feet[o + FOOT_U2] = 0;
        feet[o + FOOT_ANCHOR1] = at1;
        feet[o + FOOT_ANCHOR2] = at2;
        feet[o + FOOT_LOAD] = 0;
        continue;
      }
      const trial1 = kt * u1 + ct * (u1 - u1Before);
      const trial2 = kt * u2 + ct * (u2 - u2Before);
      const across = trial1 * trial1 + trial2 * trial2;
      const limit = friction * normal;
      let force1 = trial1;
      let force2 = trial2;
      let slip = 0;
      if (across > limit * limit) {
        const length = Math.sqrt(across);
        force1 = (trial1 * limit) / length;
        force2 = (trial2 * limit) / length;
        slip = (length - limit) / (kt + ct);
        slipped = 1;
      }
      // strut axis in surface axes
      const cx = feet[o + FOOT_STRUT]!;
      const cy = feet[o + FOOT_STRUT + 1]!;
      const cz = feet[o + FOOT_STRUT + 2]!;
      const sx = r11 * cx + r12 * cy + r13 * cz;
      const sz = r31 * cx + r32 * cy + r33 * cz;
      const a1 = nz * sx - nx * sz;
      const a2 = r21 * cx + r22 * cy + r23 * cz;
      const an = nx * sx + nz * sz;
      const pressed = normal;
      let load = normal * an + force1 * a1 + force2 * a2;
      const sideways = normal * normal + force1 * force1 + force2 * force2 - load * load;
      const secondary = feet[o + FOOT_SECONDARY]!;
      if (normal > feet[o + FOOT_BEARING]! || load > feet[o + FOOT_CRUSH]! || sideways > secondary * secondary) {
        trial[TRIAL_N] = normal;
        trial[TRIAL_T1] = trial1;
        trial[TRIAL_T2] = trial2;
        trial[TRIAL_STRUT_N] = an;
        trial[TRIAL_STRUT_T1] = a1;
        trial[TRIAL_STRUT_T2] = a2;
        trial[TRIAL_STIFF_N] = kn + cn;
        trial[TRIAL_STIFF_T] = kt + ct;
        trial[TRIAL_DASH_N] = cn;
        trial[TRIAL_DASH_T] = ct;
        returnPlastic(kernel, o, at1, at2);
        if (trial[TRIAL_ACROSS]! > 0) slipped = 1;
        normal = trial[TRIAL_HELD_N]!;
        force1 = trial[TRIAL_HELD_T1]!;
        force2 = trial[TRIAL_HELD_T2]!;
        load = normal * an + force1 * a1 + force2 * a2;
        // the pad has moved in the body
        const shiftN = trial[TRIAL_SHIFT_N]!;
        const shift1 = trial[TRIAL_SHIFT_T1]!;
        const dx = nz * shift1 + nx * shiftN;
        const dy = trial[TRIAL_SHIFT_T2]!;
        const dz = nz * shiftN - nx * shift1;
        rx += dx;
        ry += dy;
        rz += dz;
        feet[o + FOOT_X] = bx + r11 * dx + r21 * dy + r31 * dz;
        feet[o + FOOT_X + 1] = by + r12 * dx + r22 * dy + r32 * dz;
        feet[o + FOOT_X + 2] = bz + r13 * dx + r23 * dy + r33 * dz;
      } else {
        feet[o + FOOT_UN] = un;
        if (slip > 0) {
          const now1 = (force1 + ct * u1Before) / (kt + ct);
          const now2 = (force2 + ct * u2Before) / (kt + ct);
          feet[o + FOOT_U1] = now1;
          feet[o + FOOT_U2] = now2;
          feet[o + FOOT_ANCHOR1] = at1 + now1;
          feet[o + FOOT_ANCHOR2] = at2 + now2;
          feet[o + FOOT_SLIDE] = feet[o + FOOT_SLIDE]! + slip;
          if (ledger) found[FOUND_FRICTION_WORK] = found[FOUND_FRICTION_WORK]! + limit * slip;
        } else {
          feet[o + FOOT_U1] = u1;
          feet[o + FOOT_U2] = u2;
        }
        if (ledger) {
          const dn = un - unBefore;
          const d1 = feet[o + FOOT_U1]! - u1Before;
          const d2 = feet[o + FOOT_U2]! - u2Before;
          found[FOUND_DAMPING_WORK] = found[FOUND_DAMPING_WORK]! + cn * dn * dn + ct * (d1 * d1 + d2 * d2);
        }
      }
      feet[o + FOOT_LOAD] = load;
      if (load > feet[o + FOOT_PEAK_LOAD]!) feet[o + FOOT_PEAK_LOAD] = load;
      const gfx = nz * force1 + nx * normal;
      const gfz = nz * normal - nx * force1;
      fx += gfx;
      fy += force2;
      fz += gfz;
      tx += ry * gfz - rz * force2;
      ty += rz * gfx - rx * gfz;
      tz += rx * force2 - ry * gfx;
      if (share > 0) {
        // the pad has pressed for a share of this step only: README.md, "Onset"
        const weight = onsetWeight(share, cn * (un - unBefore), normal, pressed);
        addImpulse(impulse, weight, gfx, force2, gfz, rx, ry, rz);
        edges = true;
      }
    }

    if (hullOn) {
      body[BODY_PX] = px;
      body[BODY_PX + 1] = py;
      body[BODY_PX + 2] = pz;
      body[BODY_VX] = vx;
      body[BODY_VX + 1] = vy;
      body[BODY_VX + 2] = vz;
      body[BODY_LX] = lx;
      body[BODY_LX + 1] = ly;
      body[BODY_LX + 2] = lz;
      body[BODY_R11] = r11;
      body[BODY_R11 + 1] = r12;
      body[BODY_R11 + 2] = r13;
      body[BODY_R11 + 3] = r21;
      body[BODY_R11 + 4] = r22;
      body[BODY_R11 + 5] = r23;
      body[BODY_R11 + 6] = r31;
      body[BODY_R11 + 7] = r32;
      body[BODY_R11 + 8] = r33;
      if (hullContact(kernel)) edges = true;
      fx += hullForce[HULL_SUM_FX]!;
      fy += hullForce[HULL_SUM_FX + 1]!;
      fz += hullForce[HULL_SUM_FX + 2]!;
      tx += hullForce[HULL_SUM_MX]!;
      ty += hullForce[HULL_SUM_MX + 1]!;
      tz += hullForce[HULL_SUM_MX + 2]!;
    }
    ax = fx * inverseMass;
    ay = fy * inverseMass;
    az = fz * inverseMass;
    const square = ax * ax + ay * ay + az * az;
    if (square > peak) peak = square;
    mx = r11 * tx + r21 * ty + r31 * tz + holdX;
    my = r12 * tx + r22 * ty + r32 * tz + holdY;
    mz = r13 * tx + r23 * ty + r33 * tz + holdZ;
    if (thrust > 0) {
      // along the long axis of the body frame
      const push = thrust * inverseMass;
      ax += (r11 * axisX + r12 * axisY + r13 * axisZ) * push;
      ay += (r21 * axisX + r22 * axisY + r23 * axisZ) * push;
      az += (r31 * axisX + r32 * axisY + r33 * axisZ) * push;
      mx += run[RUN_THRUST_MOMENT]! * thrust;
      my += run[RUN_THRUST_MOMENT + 1]! * thrust;
      mz += run[RUN_THRUST_MOMENT + 2]! * thrust;
      thrust *= decay;
    }
    ax += gx;
    ay += gy;
    az += gz;
    if (!moving) break;
    vx += ax * half;
    vy += ay * half;
    vz += az * half;
    lx += mx * half;
    ly += my * half;
    lz += mz * half;
    if (edges) {
      vx += impulse[0]! * inverseMass * h;
      vy += impulse[1]! * inverseMass * h;
      vz += impulse[2]! * inverseMass * h;
      const ix = impulse[3]! * h;
      const iy = impulse[4]! * h;
      const iz = impulse[5]! * h;
      lx += r11 * ix + r21 * iy + r31 * iz;
      ly += r12 * ix + r22 * iy + r32 * iz;
      lz += r13 * ix + r23 * iy + r33 * iz;
      impulse.fill(0);
    }
  }

  body[BODY_PX] = px;
  body[BODY_PX + 1] = py;
  body[BODY_PX + 2] = pz;
  body[BODY_VX] = vx;
  body[BODY_VX + 1] = vy;
  body[BODY_VX + 2] = vz;
  body[BODY_QW] = qw;
  body[BODY_QW + 1] = qx;
  body[BODY_QW + 2] = qy;
  body[BODY_QW + 3] = qz;
  body[BODY_LX] = lx;
  body[BODY_LX + 1] = ly;
  body[BODY_LX + 2] = lz;
  body[BODY_AX] = ax;
  body[BODY_AX + 1] = ay;
  body[BODY_AX + 2] = az;
  body[BODY_MX] = mx;
  body[BODY_MX + 1] = my;
  body[BODY_MX + 2] = mz;
  body[BODY_R11] = r11;
  body[BODY_R11 + 1] = r12;
  body[BODY_R11 + 2] = r13;
  body[BODY_R11 + 3] = r21;
  body[BODY_R11 + 4] = r22;
  body[BODY_R11 + 5] = r23;
  body[BODY_R11 + 6] = r31;
  body[BODY_R11 + 7] = r32;
  body[BODY_R11 + 8] = r33;
  run[RUN_THRUST] = thrust;
  found[FOUND_CONTACTS] = contacts;
  if (slipped > 0) found[FOUND_SLIPPED] = 1;
  found[FOUND_HIGHEST_UN] = highest;
  found[FOUND_PEAK_ACCELERATION] = peak;
}
