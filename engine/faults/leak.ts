import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import type { Fault, VehicleFaultFrame } from './fault.ts';
import { isActive } from './isActive.ts';

const FLOW = { least: 0, most: 100, unit: 'kg/s' } as const;

/** Propellant runs out of a line or tank, and pushes nothing. */
export interface LeakFault extends VehicleFaultFrame<'tanks'> {
  readonly kind: 'leak';
  readonly parameters: {
    /** [kg/s] */
    readonly flow: number;
  };
}

export function readLeak(list: ProblemList, json: unknown, frame: VehicleFaultFrame<'tanks'>): LeakFault | undefined {
  const fields = readFields(list, json, 'parameters', ['flow']);
  const flow = readNumber(list, fields?.flow, 'parameters.flow', FLOW);
  if (flow === undefined) return undefined;
  return { ...frame, kind: 'leak', parameters: { flow } };
}

/** What is lost in this tick, over all leaks [kg/s]. */
export function leakAt(faults: readonly Fault[], tick: number): number {
  let flow = 0;
  for (const fault of faults) if (fault.kind === 'leak' && isActive(fault, tick)) flow += fault.parameters.flow;
  return flow;
}
