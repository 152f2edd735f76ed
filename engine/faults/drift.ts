import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import type { Reading } from '../sensors/reading.ts';
import { TICK_DT } from '../world/constants.ts';
import type { SensorFaultFrame } from './fault.ts';
import type { FaultMoment } from './faultMoment.ts';
import { hitsChannel } from './faultedChannels.ts';
import { OFFSET } from './faultRanges.ts';

/** Adds what grows without end. */
export interface DriftFault extends SensorFaultFrame {
  readonly kind: 'drift';
  readonly parameters: {
    /** In the unit of the channel, a second. */
    readonly rate: number;
  };
}

export function readDrift(list: ProblemList, json: unknown, frame: SensorFaultFrame): DriftFault | undefined {
  const fields = readFields(list, json, 'parameters', ['rate']);
  const rate = readNumber(list, fields?.rate, 'parameters.rate', OFFSET);
  if (rate === undefined) return undefined;
  return { ...frame, kind: 'drift', parameters: { rate } };
}

export function applyDrift(fault: DriftFault, { tick }: FaultMoment, reading: Reading): void {
  const added = fault.parameters.rate * (tick - fault.fromTick) * TICK_DT;
  for (let channel = 0; channel < reading.values.length; channel++)
    if (hitsChannel(fault, channel)) reading.values[channel]! += added;
}
