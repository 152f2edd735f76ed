import { assert } from '../assert.ts';
import { advanceFreely, advanceOnLegs } from './advanceMotion.ts';
import { callOutcome } from './callOutcome.ts';
import { PHYSICS_DT, STEPS_PER_TICK } from './constants.ts';
import type { ControlInput, DescentEvent } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { lowestFoot } from './feet.ts';
import { followContacts } from './followContacts.ts';
import { followPhase } from './followPhase.ts';
import { carryHull, isHullDown, layGround, setBulk } from './hullBody.ts';
import { readMassTable } from './massTable.ts';
import { copyMotion, isFiniteMotion } from './motion.ts';
import { burn, steer, takeCommand } from './propulsion.ts';

/** Nothing happened: one list for all such ticks. */
const NOTHING: readonly DescentEvent[] = Object.freeze([]);

/**
 * Legs are stepped finely from this height on, besides what the next step can close [m]. Far more than a pad rides over
 * rough ground; smaller would let a foot enter the ground at a coarse step.
 */
const LEGS_AWAKE_BELOW = 0.5;

/**
 * Advances a descent by one tick. `input` has come through `parseControlInput` or `quantizeControls`. Once the outcome is
 * called nothing moves any more.
 */
export function stepDescent(descent: Descent, input: ControlInput): readonly DescentEvent[] {
  if (descent.outcome !== undefined) return NOTHING;
  checkState(descent);
  const { events } = descent;
  descent.tick += 1;
  takeCommand(descent, input);
  copyMotion(descent.motion, descent.before);
  descent.hull.strike = 0;
  for (let i = 0; i < STEPS_PER_TICK; i++) stepOnce(descent);
  updateBulk(descent);
  followContacts(descent);
  followPhase(descent);
  callOutcome(descent);
  checkState(descent);
  return events.length === 0 ? NOTHING : events.splice(0);
}

/** One physics step: engine and thrusters, then legs and free motion, then hull contact. */
function stepOnce(descent: Descent): void {
  const { motion, hull, setup, forces, bulk, stepStart } = descent;
  burn(descent);
  steer(descent);
  layGround(hull, setup.terrain, motion.x, motion.y);
  const restedOnHull = isHullDown(hull);
  copyMotion(motion, stepStart);
  if (areLegsAwake(descent)) advanceOnLegs(descent.section, setup.terrain, descent.legs, motion, bulk, forces);
  else advanceFreely(motion, bulk, forces);
  carryHull(hull, stepStart, motion, restedOnHull);
}

function areLegsAwake(descent: Descent): boolean {
  const { motion, section, bulk } = descent;
  const speed =
    Math.abs(motion.vx) + Math.abs(motion.vy) + Math.abs(motion.rate) * (bulk.centerHeight + section.halfStance);
  // no foot can be lower than this
  const reach = bulk.centerHeight + section.halfStance + speed * PHYSICS_DT + LEGS_AWAKE_BELOW;
  return motion.y - reach < descent.hull.highest && lowestFoot(descent) < speed * PHYSICS_DT + LEGS_AWAKE_BELOW;
}

/** Takes over the mass properties of what propellant is left. The material of the lander keeps its motion. */
function updateBulk(descent: Descent): void {
  const { bulk, motion, hull } = descent;
  const before = bulk.mass;
  const height = bulk.centerHeight;
  readMassTable(descent.section.masses, descent.propellant, bulk);
  if (bulk.mass === before) return;
  setBulk(hull, bulk);
  const { x, y } = hull.body.getWorldCenter();
  if (bulk.centerHeight !== height) {
    motion.vx -= motion.rate * (y - motion.y);
    motion.vy += motion.rate * (x - motion.x);
  }
  motion.x = x;
  motion.y = y;
}

/** Every number that the next tick builds on is finite, before and after each tick. */
function checkState(descent: Descent): void {
  const { motion, bulk, thrust, propellant, legs } = descent;
  const [left, right] = legs;
  const rest =
    bulk.mass + bulk.centerHeight + bulk.inertia + thrust + propellant + left.crushed + left.stretch + left.drag;
  assert(
    isFiniteMotion(motion) && Number.isFinite(rest + right.crushed + right.stretch + right.drag),
    `every number of a descent is finite, tick ${descent.tick}: ${JSON.stringify({ motion, bulk, thrust, propellant })}`,
  );
}
