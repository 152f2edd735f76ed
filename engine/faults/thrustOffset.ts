import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import type { Fault, VehicleFaultFrame } from './fault.ts';
import { isActive } from './isActive.ts';

const PERCENT = { least: -100, most: 100, unit: '% of full thrust' } as const;

/** While it burns the engine gives more or less than commanded, by a constant. */
export interface ThrustOffsetFault extends VehicleFaultFrame<'engine'> {
  readonly kind: 'thrustOffset';
  readonly parameters: {
    /** [% of full thrust] */
    readonly percent: number;
  };
}

export function readThrustOffset(
  list: ProblemList,
  json: unknown,
  frame: VehicleFaultFrame<'engine'>,
): ThrustOffsetFault | undefined {
  const fields = readFields(list, json, 'parameters', ['percent']);
  const percent = readNumber(list, fields?.percent, 'parameters.percent', PERCENT);
  if (percent === undefined) return undefined;
  return { ...frame, kind: 'thrustOffset', parameters: { percent } };
}

/** What a burning engine gives on top of its command in this tick: offsets add up [% of full thrust]. */
export function thrustOffsetAt(faults: readonly Fault[], tick: number): number {
  let percent = 0;
  for (const fault of faults)
    if (fault.kind === 'thrustOffset' && isActive(fault, tick)) percent += fault.parameters.percent;
  return percent;
}
