import { readFields, type ProblemList } from '../fieldReader.ts';
import type { SensorFaultFrame } from './fault.ts';

/** No report comes: the last one stays, and ages. Acts on the source as a whole. */
export interface NoDataFault extends SensorFaultFrame {
  readonly kind: 'noData';
  readonly parameters: Readonly<Record<string, never>>;
}

export function readNoData(list: ProblemList, json: unknown, frame: SensorFaultFrame): NoDataFault | undefined {
  if (readFields(list, json, 'parameters', []) === undefined) return undefined;
  return { ...frame, kind: 'noData', parameters: {} };
}
