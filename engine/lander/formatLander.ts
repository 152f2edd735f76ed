import { assert } from '../assert.ts';
import type { Lander, Leg } from './lander.ts';
import { LANDER_FORMAT } from './landerRanges.ts';

/**
 * The document that parseLander reads back as this very lander, to the last bit; JSON.stringify makes a file of it. Legs
 * are written as lists, whichever way they came.
 */
export function formatLander(lander: Lander): unknown {
  const { id, name, summary, parts, tanks, hull, engine, probeLength } = lander;
  const legs = formatLegs(lander.legs);
  return structureOf({ format: LANDER_FORMAT, id, name, summary, parts, tanks, legs, hull, engine, probeLength });
}

/** The format has one build for all legs. */
function formatLegs(legs: readonly Leg[]): object {
  const [first] = legs;
  assert(first !== undefined, 'a lander has legs');
  const { footpad: _, hip: __, ...build } = first;
  return { footpads: legs.map(({ footpad }) => [footpad[0], footpad[1]]), hips: legs.map(({ hip }) => hip), ...build };
}

/** A copy that shares nothing with the frozen lander. */
function structureOf(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(structureOf);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, structureOf(inner)]));
}
