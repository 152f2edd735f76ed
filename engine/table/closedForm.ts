import { tripLimit, type ContactCondition, type PivotBody } from '../pivot/tripLimit.ts';
import type { DescentSetup, TouchdownState } from '../world/descent.ts';
import { layOutSection } from '../world/layOutSection.ts';
import { readMassTable } from '../world/massTable.ts';
import type { SectionLander } from '../world/sectionLander.ts';

/**
 * Reference beside the tip limit of a contact: the plastic trip limit of a body whose feet meet the ground together on rigid legs [m/s]. 0 where
 * it allows no speed. Not a limit of the lander.
 */
export function closedFormAt(setup: DescentSetup, arrival: TouchdownState): number {
  const { body, condition } = pivotAtTouchdown(setup, arrival);
  const limit = tripLimit(body, condition);
  return limit.kind === 'limit' ? Math.max(0, limit.plastic.horizontal) : 0;
}

/** The body and the condition from which the closed form of a contact is computed, for whoever wants to compute it again. */
export function pivotAtTouchdown(
  setup: Pick<DescentSetup, 'lander' | 'propellant' | 'gravity'>,
  arrival: TouchdownState,
): { readonly body: PivotBody; readonly condition: ContactCondition } {
  const body = pivotBodyAt(layOutSection(setup.lander, setup.propellant, arrival.facing), arrival.mass);
  const direction = travelOf(arrival);
  // slope and rate are counter-clockwise: a fall to the right, or a turn to it, is the negative
  const condition: ContactCondition = {
    gravity: setup.gravity,
    slope: -direction * arrival.slope,
    rate: -direction * arrival.rate,
    descentRate: Math.max(0, arrival.descentRate),
    firstContact: 'together',
  };
  return { body, condition };
}

/** +1 to the right, −1 to the left; a lander that comes straight down counts as traveling downhill. */
export function travelOf({ vx, slope }: Pick<TouchdownState, 'vx' | 'slope'>): 1 | -1 {
  if (vx !== 0) return vx > 0 ? 1 : -1;
  return slope > 0 ? -1 : 1;
}

/** The section as a body about to pivot, with as much mass as it has at the contact [kg]. */
export function pivotBodyAt(section: SectionLander, mass: number): PivotBody {
  const bulk = { mass: 0, centerHeight: 0, inertia: 0 };
  const { leastMass, fullPropellant } = section.masses;
  // mass less least mass leaves a rounding error on either end of what the table holds
  readMassTable(section.masses, Math.max(0, Math.min(fullPropellant, mass - leastMass)), bulk);
  return { ...bulk, halfStance: section.halfStance };
}
