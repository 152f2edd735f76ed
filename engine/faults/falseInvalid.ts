import { readFields, type ProblemList } from '../fieldReader.ts';
import type { Reading } from '../sensors/reading.ts';
import type { SensorFaultFrame } from './fault.ts';

/** The sensor calls itself invalid, though its values are good. Acts on the source as a whole. */
export interface FalseInvalidFault extends SensorFaultFrame {
  readonly kind: 'falseInvalid';
  readonly parameters: Readonly<Record<string, never>>;
}

export function readFalseInvalid(
  list: ProblemList,
  json: unknown,
  frame: SensorFaultFrame,
): FalseInvalidFault | undefined {
  if (readFields(list, json, 'parameters', []) === undefined) return undefined;
  return { ...frame, kind: 'falseInvalid', parameters: {} };
}

export function applyFalseInvalid(reading: Reading): void {
  reading.isValid = false;
  reading.hasLock = true;
}
