import { createHash, formatHash, hashFloats, mixFloat64 } from '../math/hash.ts';
import { hashValue } from '../math/hashValue.ts';
import { feetMemory } from '../touchdown/planarFeet.ts';
import type { Phase } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { hullMemory } from './hullBody.ts';

/**
 * Everything that decides the next tick of a descent: numbers to the bit, and hashes of what is too much to write down. Two descents of one
 * setup with equal marks go on alike under the same inputs.
 */
export interface DescentMark {
  readonly tick: number;
  readonly phase: Phase;
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly vx: number;
  readonly vy: number;
  readonly rate: number;
  readonly thrust: number;
  readonly propellant: number;
  /** Force and memory of every foot, in the order of the legs. */
  readonly legs: string;
  /** What touched, what gave way, the contacts so far, the controls, how far it has turned, the outcome. */
  readonly contacts: string;
  /** What the rigid-body world keeps of the hull and the ground under it: place, speed, contacts with their impulses. */
  readonly hull: string;
}

export function markDescent(descent: Descent): DescentMark {
  const { tick, phase, motion, thrust, propellant } = descent;
  const { x, y, angle, vx, vy, rate } = motion;
  const legs = legsHash(descent);
  const hull = hashFloats(hullMemory(descent.hull));
  return { tick, phase, x, y, angle, vx, vy, rate, thrust, propellant, legs, contacts: contactsHash(descent), hull };
}

/** Of the whole mark. Equal hashes mean equal bits, on whatever engine they were computed. */
export function hashDescent(descent: Descent): string {
  return hashValue(markDescent(descent));
}

function legsHash({ feet, legsAwake }: Descent): string {
  const hash = createHash();
  for (const value of [feet.forceX, feet.forceY, feet.moment, Number(legsAwake)]) mixFloat64(hash, value);
  for (const value of feetMemory(feet)) mixFloat64(hash, value);
  return formatHash(hash);
}

function contactsHash({ contact, arrivals, touchdown, before, commanded, outcome, heading }: Descent): string {
  return hashValue({ contact, arrivals, touchdown, before, commanded, outcome, heading });
}
