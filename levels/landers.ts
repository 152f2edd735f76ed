import { parseLander, type Lander } from '../engine/lander/index.ts';
import { formatProblem } from '../engine/result.ts';
import bolster from './landers/bolster.json' with { type: 'json' };
import steeple from './landers/steeple.json' with { type: 'json' };
import trivet from './landers/trivet.json' with { type: 'json' };

/** The landers of the examples, in the order in which pickers list them. All are invented. */
export const LANDERS: readonly Lander[] = [load('trivet', trivet), load('steeple', steeple), load('bolster', bolster)];

export function findLander(id: string): Lander | undefined {
  return LANDERS.find((lander) => lander.id === id);
}

function load(id: string, json: unknown): Lander {
  const parsed = parseLander(json);
  if (!parsed.ok) throw new Error(`landers/${id}.json: ${parsed.error.map(formatProblem).join('; ')}`);
  if (parsed.value.id !== id) throw new Error(`landers/${id}.json: expected id ${id}, got ${parsed.value.id}`);
  return parsed.value;
}
