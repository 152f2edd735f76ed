import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import type { Fault, VehicleFaultFrame } from './fault.ts';
import { LEG } from './faultRanges.ts';
import { isActive } from './isActive.ts';

/** A leg is down and not locked: it folds under load, and its indication says so. */
export interface LegNotLatchedFault extends VehicleFaultFrame<'legs'> {
  readonly kind: 'legNotLatched';
  readonly parameters: {
    /** In the order of the lander, from 0. */
    readonly leg: number;
  };
}

export function readLegNotLatched(
  list: ProblemList,
  json: unknown,
  frame: VehicleFaultFrame<'legs'>,
): LegNotLatchedFault | undefined {
  const fields = readFields(list, json, 'parameters', ['leg']);
  const leg = readNumber(list, fields?.leg, 'parameters.leg', LEG);
  if (leg === undefined) return undefined;
  return { ...frame, kind: 'legNotLatched', parameters: { leg } };
}

/** Writes which legs are not locked in this tick, one entry a leg: those not latched, and those missing. */
export function noteUnlocked(faults: readonly Fault[], tick: number, into: boolean[]): void {
  into.fill(false);
  for (const fault of faults) {
    const isLoose = fault.kind === 'legNotLatched' || fault.kind === 'legMissing';
    if (isLoose && fault.parameters.leg < into.length && isActive(fault, tick)) into[fault.parameters.leg] = true;
  }
}
