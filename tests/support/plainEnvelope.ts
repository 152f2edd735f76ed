import type { EnvelopeQuestion, SimulateEnvelope } from '../../engine/envelope/index.ts';
import type { TouchdownOutcome } from '../../engine/touchdown/touchdownCase.ts';
import { plainLander } from './plainLander.ts';

/** A square grid of speeds, one direction, nothing special. */
export function plainQuestion(changes: Partial<EnvelopeQuestion> = {}): EnvelopeQuestion {
  return {
    lander: plainLander(),
    conditions: { gravity: 1.62422, ground: { shape: { kind: 'plane', slope: 0 }, friction: 0.8 } },
    horizontalSpeed: { from: -4, to: 4, count: 33 },
    descentRate: { from: 0, to: 4, count: 33 },
    directions: [{ yaw: 0 }],
    ...changes,
  };
}

/** Answers from a drawn region instead of a simulation, and counts how often it was asked. */
export function drawnRegion(
  outcomeAt: (horizontalSpeed: number, descentRate: number, yaw: number) => TouchdownOutcome,
): SimulateEnvelope & { readonly asked: () => number } {
  let count = 0;
  const simulate: SimulateEnvelope = ({ state }) => {
    count++;
    const outcome = outcomeAt(state.horizontalSpeed, state.descentRate, state.yaw ?? 0);
    const limits = {
      upright: [],
      'timed out': [],
      overloaded: ['crush exhausted'],
      'tipped downhill': ['tip downhill'],
      'tipped uphill': ['tip uphill'],
    } as const;
    return { outcome, limitsHit: limits[outcome], leastMargin: { value: outcome === 'upright' ? 1 : -1, time: 0 } };
  };
  return Object.assign(simulate, { asked: () => count });
}
