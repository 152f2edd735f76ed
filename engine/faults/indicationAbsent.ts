import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import type { Reading } from '../sensors/reading.ts';
import type { VehicleFaultFrame } from './fault.ts';
import { LEG } from './faultRanges.ts';

/** A leg is never shown locked, though it may be: the switch in its latch is dead. */
export interface IndicationAbsentFault extends VehicleFaultFrame<'legs'> {
  readonly kind: 'indicationAbsent';
  readonly parameters: {
    /** In the order of the lander, from 0. */
    readonly leg: number;
  };
}

export function readIndicationAbsent(
  list: ProblemList,
  json: unknown,
  frame: VehicleFaultFrame<'legs'>,
): IndicationAbsentFault | undefined {
  const fields = readFields(list, json, 'parameters', ['leg']);
  const leg = readNumber(list, fields?.leg, 'parameters.leg', LEG);
  if (leg === undefined) return undefined;
  return { ...frame, kind: 'indicationAbsent', parameters: { leg } };
}

/** On a reading of the leg indications. */
export function applyIndicationAbsent(fault: IndicationAbsentFault, reading: Reading): void {
  const { leg } = fault.parameters;
  if (leg < reading.values.length) reading.values[leg] = 0;
}
