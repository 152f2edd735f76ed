import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import type { VehicleFaultFrame } from './fault.ts';
import { LEG } from './faultRanges.ts';

const SOFTNESS = { least: 0.01, most: 1, unit: '-' } as const;

/** Every crush force of a leg is less than built. */
export interface LegSoftFault extends VehicleFaultFrame<'legs'> {
  readonly kind: 'legSoft';
  readonly parameters: {
    /** In the order of the lander, from 0. */
    readonly leg: number;
    /** Of each crush force [-]. */
    readonly factor: number;
  };
}

export function readLegSoft(
  list: ProblemList,
  json: unknown,
  frame: VehicleFaultFrame<'legs'>,
): LegSoftFault | undefined {
  const fields = readFields(list, json, 'parameters', ['leg', 'factor']);
  const leg = readNumber(list, fields?.leg, 'parameters.leg', LEG);
  const factor = readNumber(list, fields?.factor, 'parameters.factor', SOFTNESS);
  if (leg === undefined || factor === undefined) return undefined;
  return { ...frame, kind: 'legSoft', parameters: { leg, factor } };
}
