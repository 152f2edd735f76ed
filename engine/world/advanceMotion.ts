import { cos, sin } from '../math/trig.ts';
import { pressFeet, takeEdgeImpulse, type PlanarFeet } from '../touchdown/planarFeet.ts';
import { PHYSICS_DT } from './constants.ts';
import type { Bulk, Motion } from './motion.ts';

/** Forces that stay as they are through one physics step. */
export interface SteadyForces {
  /** Surface gravity [m/s²]. */
  gravity: number;
  /** Along the long axis, through the center of mass [N]. */
  thrust: number;
  /** Of the attitude thrusters, counter-clockwise [N·m]. */
  torque: number;
}

/** Scratch, overwritten before each use. */
const IMPULSE = new Float64Array(3);

/**
 * Moves the body through one physics step without hull contact: half a drift, a kick, half a drift. Exact for a constant
 * acceleration, second order and without drift of energy for springs (Störmer-Verlet in its position form).
 */
export function advanceFreely(motion: Motion, bulk: Bulk, forces: SteadyForces): void {
  drift(motion, PHYSICS_DT / 2);
  const push = forces.thrust / bulk.mass;
  motion.vx += -sin(motion.angle) * push * PHYSICS_DT;
  motion.vy += (cos(motion.angle) * push - forces.gravity) * PHYSICS_DT;
  motion.rate += (forces.torque / bulk.inertia) * PHYSICS_DT;
  drift(motion, PHYSICS_DT / 2);
}

/** The same in the shorter steps of the feet, as the simulation takes them: half a kick, a drift, half a kick. */
export function advanceOnLegs(feet: PlanarFeet, motion: Motion, bulk: Bulk, forces: SteadyForces): void {
  const { step, steps } = feet;
  let cosHalf = cos(motion.angle / 2);
  let sinHalf = sin(motion.angle / 2);
  for (let i = 0; i < steps; i++) {
    kick(feet, motion, bulk, forces, cosHalf, sinHalf);
    drift(motion, step);
    cosHalf = cos(motion.angle / 2);
    sinHalf = sin(motion.angle / 2);
    pressFeet(feet, motion, cosHalf, sinHalf);
    kick(feet, motion, bulk, forces, cosHalf, sinHalf);
    takeEdgeImpulse(feet, IMPULSE);
    motion.vx += IMPULSE[0]! / bulk.mass;
    motion.vy += IMPULSE[1]! / bulk.mass;
    motion.rate += IMPULSE[2]! / bulk.inertia;
  }
}

/** Feet that have not been looked at for a while: where they are now, and what presses them there. */
export function settleFeet(feet: PlanarFeet, motion: Motion): void {
  pressFeet(feet, motion, cos(motion.angle / 2), sin(motion.angle / 2));
  takeEdgeImpulse(feet, IMPULSE);
}

/** Half of what the forces at this place do in a step of the feet. */
function kick(
  feet: PlanarFeet,
  motion: Motion,
  bulk: Bulk,
  forces: SteadyForces,
  cosHalf: number,
  sinHalf: number,
): void {
  const half = feet.step / 2;
  const cosine = cosHalf * cosHalf - sinHalf * sinHalf;
  const sine = 2 * sinHalf * cosHalf;
  motion.vx += ((feet.forceX - sine * forces.thrust) / bulk.mass) * half;
  motion.vy += ((feet.forceY + cosine * forces.thrust) / bulk.mass - forces.gravity) * half;
  motion.rate += ((feet.moment + forces.torque) / bulk.inertia) * half;
}

function drift(motion: Motion, time: number): void {
  motion.x += motion.vx * time;
  motion.y += motion.vy * time;
  motion.angle += motion.rate * time;
}
