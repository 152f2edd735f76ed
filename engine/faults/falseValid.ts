import { readFields, type ProblemList } from '../fieldReader.ts';
import type { Reading } from '../sensors/reading.ts';
import type { SensorFaultFrame } from './fault.ts';

/** The sensor calls itself valid whatever it measures: where it measures nothing, it repeats its last values. Acts on the source as a whole. */
export interface FalseValidFault extends SensorFaultFrame {
  readonly kind: 'falseValid';
  readonly parameters: Readonly<Record<string, never>>;
}

export function readFalseValid(list: ProblemList, json: unknown, frame: SensorFaultFrame): FalseValidFault | undefined {
  if (readFields(list, json, 'parameters', []) === undefined) return undefined;
  return { ...frame, kind: 'falseValid', parameters: {} };
}

export function applyFalseValid(reading: Reading): void {
  reading.isValid = true;
  reading.hasLock = true;
}
