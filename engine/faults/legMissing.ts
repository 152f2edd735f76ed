import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import type { VehicleFaultFrame } from './fault.ts';
import { LEG } from './faultRanges.ts';

/** A leg is not there and carries nothing. */
export interface LegMissingFault extends VehicleFaultFrame<'legs'> {
  readonly kind: 'legMissing';
  readonly parameters: {
    /** In the order of the lander, from 0. */
    readonly leg: number;
  };
}

export function readLegMissing(
  list: ProblemList,
  json: unknown,
  frame: VehicleFaultFrame<'legs'>,
): LegMissingFault | undefined {
  const fields = readFields(list, json, 'parameters', ['leg']);
  const leg = readNumber(list, fields?.leg, 'parameters.leg', LEG);
  if (leg === undefined) return undefined;
  return { ...frame, kind: 'legMissing', parameters: { leg } };
}
