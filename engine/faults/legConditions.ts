import type { LegCondition } from '../touchdown/touchdownCase.ts';
import type { Fault } from './fault.ts';
import { isActive } from './isActive.ts';

/**
 * The legs that are not as they should be in this tick, as the touchdown simulation takes them: one condition a leg at most, in order of the legs.
 * Missing counts before not latched, that before soft; of two soft ones the softer.
 */
export function legConditionsAt(faults: readonly Fault[], tick: number): readonly LegCondition[] {
  const found = new Map<number, LegCondition>();
  for (const fault of faults) {
    const condition = isActive(fault, tick) ? conditionOf(fault) : undefined;
    if (condition === undefined) continue;
    const known = found.get(condition.leg);
    if (known === undefined || severity(condition) > severity(known)) found.set(condition.leg, condition);
  }
  return [...found.values()].toSorted((a, b) => a.leg - b.leg);
}

function conditionOf(fault: Fault): LegCondition | undefined {
  if (fault.kind === 'legMissing') return { leg: fault.parameters.leg, kind: 'missing' };
  if (fault.kind === 'legNotLatched') return { leg: fault.parameters.leg, kind: 'not latched' };
  if (fault.kind === 'legSoft') return { ...fault.parameters, kind: 'soft' };
  return undefined;
}

/** Larger is worse: a soft leg counts less than 1, the softer the more. */
function severity(condition: LegCondition): number {
  if (condition.kind === 'missing') return 2;
  return condition.kind === 'not latched' ? 1 : 1 - condition.factor;
}
