import { holdTorque } from '../descent/attitudeHold.ts';
import { burnPercent, commandedThrust, leastBurnPercent, propellantPerImpulse } from '../descent/thrust.ts';
import { isCutOffDead } from '../faults/cutOffFails.ts';
import { leakAt } from '../faults/leak.ts';
import { thrustFactorAt } from '../faults/thrustLoss.ts';
import { thrustOffsetAt } from '../faults/thrustOffset.ts';
import { PHYSICS_DT } from './constants.ts';
import type { ControlInput } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { lowestFoot } from './feet.ts';
import { FINAL_DROP_BELOW } from './thresholds.ts';

/** Thrust below this share of the engine's maximum, after shut-down, is none [-]. */
const TAIL_END = 1e-3;

/** Scratch, overwritten before each use. */
const TURNING = { inertia: 0, maxTorque: 0 };

/** The state shows what is really commanded: a lever below the least burn burns at the least burn. */
export function takeCommand(descent: Descent, input: ControlInput): void {
  const isFed = descent.propellant > 0 && !descent.valves.isCut;
  const percent = isFed ? heardPercent(descent, input.thrustPercent) : 0;
  const { commanded } = descent;
  if (commanded.thrustPercent === percent && commanded.tiltDeg === input.tiltDeg) return;
  descent.commanded = { thrustPercent: percent, tiltDeg: input.tiltDeg };
}

/** What the engine makes of its lever [%]: one that cannot be cut off burns on at its least. */
function heardPercent({ setup, faults, commanded, tick }: Descent, leverPercent: number): number {
  const { engine } = setup.lander;
  const isCutOff = leverPercent === 0 && commanded.thrustPercent > 0;
  return isCutOff && isCutOffDead(faults, tick) ? leastBurnPercent(engine) : burnPercent(engine, leverPercent);
}

/** The thrust toward which the engine goes [N]: what is commanded, as faults leave it. */
function givenThrust({ setup, faults, commanded, tick }: Descent): number {
  const { engine } = setup.lander;
  const asked = commandedThrust(engine, commanded.thrustPercent);
  if (faults.length === 0 || asked === 0) return asked;
  const offset = (thrustOffsetAt(faults, tick) / 100) * engine.maxThrust;
  return Math.max(0, asked * thrustFactorAt(faults, tick) + offset);
}

/** What runs out in one physics step, and pushes nothing. */
function leak(descent: Descent): void {
  if (descent.faults.length === 0 || descent.propellant === 0 || descent.valves.isLineShut) return;
  descent.propellant -= Math.min(descent.propellant, leakAt(descent.faults, descent.tick) * PHYSICS_DT);
  if (descent.propellant === 0) noteEmptyTanks(descent);
}

/** Sets the thrust of one physics step behind the lag, takes its propellant, and the mass as it is on average. */
export function burn(descent: Descent): void {
  const { forces, lag, bulk } = descent;
  const { engine } = descent.setup.lander;
  leak(descent);
  const command = givenThrust(descent);
  const missing = descent.thrust - command;
  forces.thrust = command + missing * lag.meanLeft;
  descent.thrust = command + missing * lag.left;
  if (command === 0 && descent.thrust < TAIL_END * engine.maxThrust) descent.thrust = 0;
  if (forces.thrust === 0) return;
  const wanted = forces.thrust * PHYSICS_DT * propellantPerImpulse(engine);
  const used = Math.min(wanted, descent.propellant);
  if (used < wanted) {
    // the tanks run empty within this step
    forces.thrust *= used / wanted;
    descent.thrust = 0;
    if (used > 0) noteEmptyTanks(descent);
  }
  descent.propellant -= used;
  bulk.mass = descent.section.masses.leastMass + descent.propellant + used / 2;
}

function noteEmptyTanks(descent: Descent): void {
  descent.events.push({ kind: 'propellantOut', tick: descent.tick });
  descent.commanded = { thrustPercent: 0, tiltDeg: descent.commanded.tiltDeg };
  if (descent.touchdown === undefined && lowestFoot(descent) > FINAL_DROP_BELOW) descent.contact.ranDry = true;
}

/**
 * Torque of the attitude thrusters. They hold the commanded tilt in flight and are off from the first contact on, so that
 * what the lander does on the ground is its own doing; a lander that flies again is held again.
 */
export function steer(descent: Descent): void {
  const { motion, bulk, forces, contact, setup } = descent;
  // nor in the step that brings a foot to the ground
  const isMeeting = contact.touched.includes(true) || lowestFoot(descent) <= -motion.vy * PHYSICS_DT;
  if (contact.firstTick >= 0 || isMeeting) {
    forces.torque = 0;
    return;
  }
  TURNING.inertia = bulk.inertia;
  TURNING.maxTorque = setup.lander.engine.attitudeTorque;
  const error = (descent.commanded.tiltDeg * Math.PI) / 180 - motion.angle;
  forces.torque = holdTorque(TURNING, error, motion.rate);
}
