import { readFields, type ProblemList } from '../fieldReader.ts';
import type { SensorFaultFrame } from './fault.ts';

/** Reports go on coming, each with the value of the last one before the fault. What it repeats stands in the sensor's line. */
export interface FreezeFault extends SensorFaultFrame {
  readonly kind: 'freeze';
  readonly parameters: Readonly<Record<string, never>>;
}

export function readFreeze(list: ProblemList, json: unknown, frame: SensorFaultFrame): FreezeFault | undefined {
  if (readFields(list, json, 'parameters', []) === undefined) return undefined;
  return { ...frame, kind: 'freeze', parameters: {} };
}
