import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import type { Fault, VehicleFaultFrame } from './fault.ts';
import { SHARE } from './faultRanges.ts';
import { isActive } from './isActive.ts';

/** The engine gives only a share of the thrust it is commanded, and burns in proportion. */
export interface ThrustLossFault extends VehicleFaultFrame<'engine'> {
  readonly kind: 'thrustLoss';
  readonly parameters: {
    /** What is left; 0: the engine is out [-]. */
    readonly factor: number;
  };
}

export function readThrustLoss(
  list: ProblemList,
  json: unknown,
  frame: VehicleFaultFrame<'engine'>,
): ThrustLossFault | undefined {
  const fields = readFields(list, json, 'parameters', ['factor']);
  const factor = readNumber(list, fields?.factor, 'parameters.factor', SHARE);
  if (factor === undefined) return undefined;
  return { ...frame, kind: 'thrustLoss', parameters: { factor } };
}

/** Share of the commanded thrust that the engine gives in this tick: losses multiply [-]. */
export function thrustFactorAt(faults: readonly Fault[], tick: number): number {
  let factor = 1;
  for (const fault of faults)
    if (fault.kind === 'thrustLoss' && isActive(fault, tick)) factor *= fault.parameters.factor;
  return factor;
}
