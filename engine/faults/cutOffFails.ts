import { readFields, type ProblemList } from '../fieldReader.ts';
import type { Fault, VehicleFaultFrame } from './fault.ts';
import { isActive } from './isActive.ts';

/** A burning engine does not shut down: commanded off, it burns at its least. */
export interface CutOffFailsFault extends VehicleFaultFrame<'engine'> {
  readonly kind: 'cutOffFails';
  readonly parameters: Readonly<Record<string, never>>;
}

export function readCutOffFails(
  list: ProblemList,
  json: unknown,
  frame: VehicleFaultFrame<'engine'>,
): CutOffFailsFault | undefined {
  if (readFields(list, json, 'parameters', []) === undefined) return undefined;
  return { ...frame, kind: 'cutOffFails', parameters: {} };
}

/** Whether a command to shut down goes unheard in this tick. */
export function isCutOffDead(faults: readonly Fault[], tick: number): boolean {
  return faults.some((fault) => fault.kind === 'cutOffFails' && isActive(fault, tick));
}
