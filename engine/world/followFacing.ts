import { weighFeet } from '../touchdown/planarFeet.ts';
import { layOutFeet } from './createDescent.ts';
import type { Descent } from './descentRecord.ts';
import { headingAt, turnedOn } from './facings.ts';
import { reshapeHull } from './hullBody.ts';
import { layOutSection } from './layOutSection.ts';
import { readMassTable } from './massTable.ts';

/**
 * Turns the lander about its long axis toward an edge of its footprint, in free flight alone: what has met the ground, or is a step from it, stays as it stands, and so does one
 * that is between two edges. Its lean stays in the section, which the thrusters hold it in; starting and stopping the turn take no time.
 */
export function followFacing(descent: Descent, ordered: number): void {
  const { section, setup, legsAwake, touchdown } = descent;
  if (descent.heading === undefined && ordered === (setup.facing ?? 0)) return;
  if (legsAwake || touchdown !== undefined) return;
  const before = descent.heading ?? headingAt(section.facings, 0);
  descent.heading = turnedOn(section.facings, before, ordered);
  if (descent.heading.steps !== before.steps) layOutAnew(descent, descent.heading.steps);
}

/** Another edge lies to the right: hull, feet and masses as seen along it, about a center of mass that goes on as it did. */
function layOutAnew(descent: Descent, steps: number): void {
  const { setup, bulk, motion, legs, propellant } = descent;
  const momentum = bulk.inertia * motion.rate;
  descent.section = layOutSection(setup.lander, setup.propellant, steps);
  readMassTable(descent.section.masses, propellant, bulk);
  motion.rate = momentum / bulk.inertia;
  descent.feet = layOutFeet(setup, descent.section, legs);
  weighFeet(descent.feet, bulk.mass, bulk.centerHeight);
  reshapeHull(descent.hull, setup.terrain, descent.section.hull, bulk, motion);
}
