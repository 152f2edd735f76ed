import { cos, sin } from '../math/trig.ts';
import { LEG_DT, LEG_STEPS, PHYSICS_DT } from './constants.ts';
import type { Terrain } from './descent.ts';
import { loadFoot, placeFoot } from './legForce.ts';
import type { Bulk, Motion } from './motion.ts';
import type { LegWork, SectionLander } from './sectionLander.ts';

/** Forces that stay as they are through one physics step. */
export interface SteadyForces {
  /** Surface gravity [m/s²]. */
  gravity: number;
  /** Along the long axis, through the center of mass [N]. */
  thrust: number;
  /** Of the attitude thrusters, counter-clockwise [N·m]. */
  torque: number;
}

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

/** The same in LEG_STEPS shorter steps, with the legs standing on the ground. */
export function advanceOnLegs(
  section: SectionLander,
  terrain: Terrain,
  legs: readonly LegWork[],
  motion: Motion,
  bulk: Bulk,
  forces: SteadyForces,
): void {
  const push = forces.thrust / bulk.mass;
  const spin = (forces.torque / bulk.inertia) * LEG_DT;
  for (let i = 0; i < LEG_STEPS; i++) {
    drift(motion, LEG_DT / 2);
    const cosine = cos(motion.angle);
    const sine = sin(motion.angle);
    // first every force from one state, then every kick
    let forceX = 0;
    let forceY = 0;
    let moment = 0;
    for (const work of legs) {
      placeFoot(section, terrain, bulk.centerHeight, motion, cosine, sine, work);
      loadFoot(section, terrain.friction, bulk, work);
    }
    for (const work of legs) {
      forceX += work.forceX;
      forceY += work.forceY;
      moment += work.moment;
    }
    motion.vx += (forceX / bulk.mass - sine * push) * LEG_DT;
    motion.vy += (forceY / bulk.mass + cosine * push - forces.gravity) * LEG_DT;
    motion.rate += (moment / bulk.inertia) * LEG_DT + spin;
    drift(motion, LEG_DT / 2);
  }
}

function drift(motion: Motion, time: number): void {
  motion.x += motion.vx * time;
  motion.y += motion.vy * time;
  motion.angle += motion.rate * time;
}
