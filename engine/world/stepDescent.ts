import { assert } from '../assert.ts';
import { weighFeet } from '../touchdown/planarFeet.ts';
import { advanceFreely, advanceOnLegs, settleFeet } from './advanceMotion.ts';
import { callOutcome } from './callOutcome.ts';
import { PHYSICS_DT, STEPS_PER_TICK } from './constants.ts';
import { OPEN_VALVES, type ControlInput, type DescentEvent, type Valves } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { lowestFoot } from './feet.ts';
import { followContacts, noteFeet } from './followContacts.ts';
import { followFacing } from './followFacing.ts';
import { followLegs } from './followLegs.ts';
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
 * Advances a descent by one tick. `input` has come through `parseControlInput` or `quantizeControls`; `facing` is by how many edges from the start the lander is to turn. Once
 * the outcome is called nothing moves any more.
 */
export function stepDescent(
  descent: Descent,
  input: ControlInput,
  valves: Valves = OPEN_VALVES,
  facing: number = descent.setup.facing ?? 0,
): readonly DescentEvent[] {
  if (descent.outcome !== undefined) return NOTHING;
  checkState(descent);
  const { events } = descent;
  descent.tick += 1;
  descent.valves = valves;
  followFacing(descent, facing);
  followLegs(descent);
  takeCommand(descent, input);
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
  const { motion, hull, setup, forces, bulk, stepStart, before, contact, feet } = descent;
  burn(descent);
  steer(descent);
  layGround(hull, setup.terrain, motion.x, motion.y);
  const restedOnHull = isHullDown(hull);
  copyMotion(motion, stepStart);
  if (!restedOnHull && !contact.touched.includes(true)) copyMotion(motion, before);
  const areAwake = areLegsAwake(descent);
  // how far each foot is off the ground before the first of the short steps: the onset of a contact builds on it
  if (areAwake && !descent.legsAwake) settleFeet(feet, motion);
  descent.legsAwake = areAwake;
  if (areAwake) {
    advanceOnLegs(feet, motion, bulk, forces);
    noteFeet(descent);
  } else advanceFreely(motion, bulk, forces);
  carryHull(hull, stepStart, motion, restedOnHull);
}

function areLegsAwake(descent: Descent): boolean {
  const { motion, feet } = descent;
  const speed = Math.abs(motion.vx) + Math.abs(motion.vy) + Math.abs(motion.rate) * feet.reach;
  // no foot can be lower than this
  const reach = feet.reach + speed * PHYSICS_DT + LEGS_AWAKE_BELOW;
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
  weighFeet(descent.feet, bulk.mass, bulk.centerHeight);
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
  const { motion, bulk, thrust, propellant, feet } = descent;
  const rest = bulk.mass + bulk.centerHeight + bulk.inertia + thrust + propellant;
  // a foot that is lost shows in its force one step later
  const pressed = feet.forceX + feet.forceY + feet.moment;
  if (isFiniteMotion(motion) && Number.isFinite(rest + pressed)) return;
  // the words are put together only when they are needed: this is looked at twice a tick
  const numbers = JSON.stringify({ motion, bulk, thrust, propellant });
  assert(false, `every number of a descent is finite, tick ${descent.tick}: ${numbers}`);
}
