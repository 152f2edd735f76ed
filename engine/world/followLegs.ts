import type { Fault } from '../faults/fault.ts';
import { legConditionsAt } from '../faults/legConditions.ts';
import { weighFeet } from '../touchdown/planarFeet.ts';
import type { LegCondition } from '../touchdown/touchdownCase.ts';
import { layOutFeet } from './createDescent.ts';
import type { Descent } from './descentRecord.ts';

/**
 * Takes over what becomes of the legs while they hang free: soft, or whole again. A leg that has met the ground stays as it was then: what it has crushed does not come
 * back. One that is missing or not latched cannot be played: in the simulation such a lander falls over a corner, out of the section.
 */
export function followLegs(descent: Descent): void {
  const { faults, tick, touchdown, legsAwake, setup, section, bulk } = descent;
  if (legsAwake || touchdown !== undefined || (descent.legs.length === 0 && !hasLegFault(faults))) return;
  const legs = legConditionsAt(faults, tick);
  if (areAlike(legs, descent.legs)) return;
  descent.legs = legs;
  descent.feet = layOutFeet(setup, section, legs);
  weighFeet(descent.feet, bulk.mass, bulk.centerHeight);
}

function hasLegFault(faults: readonly Fault[]): boolean {
  return faults.some(({ source }) => source === 'legs');
}

function areAlike(one: readonly LegCondition[], other: readonly LegCondition[]): boolean {
  return one.length === other.length && one.every((condition, i) => isAlike(condition, other[i]));
}

function isAlike(one: LegCondition, other: LegCondition | undefined): boolean {
  if (other === undefined || one.leg !== other.leg || one.kind !== other.kind) return false;
  return one.kind === 'missing' || (other.kind !== 'missing' && one.factor === other.factor);
}
