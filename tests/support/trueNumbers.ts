import type { TablePlan } from '../../engine/table/index.ts';
import type { DescentState } from '../../engine/world/index.ts';

/** Numbers of a descent that only whoever sees the truth can have. Whole ones, and what follows from the plan and the controls alone, could be there by chance. */
export function trueNumbers(flight: DescentState): readonly number[] {
  const { x, y, vx, vy, angle, rate, height, slope, propellant, legs } = flight;
  const feet = legs.flatMap(({ footX, footY, stroke, load }) => [footX, footY, stroke, load]);
  const contacts = flight.contacts.flatMap((contact) => [contact.x, contact.vx, contact.descentRate, contact.angle]);
  return [x, y, vx, vy, angle, rate, height, slope, propellant, ...feet, ...contacts].filter(isTelling);
}

/** What a plan would tell of the ground. */
export function trueGround({ setup }: TablePlan): readonly number[] {
  return setup.terrain.heights.filter(isTelling);
}

function isTelling(value: number): boolean {
  return !Number.isInteger(value * 1000);
}
