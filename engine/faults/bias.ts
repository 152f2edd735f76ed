import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import type { Reading } from '../sensors/reading.ts';
import { TICK_DT } from '../world/constants.ts';
import type { SensorFaultFrame } from './fault.ts';
import type { FaultMoment } from './faultMoment.ts';
import { hitsChannel } from './faultedChannels.ts';
import { OFFSET, SECONDS } from './faultRanges.ts';

/** Adds a constant: at once, or in a ramp. */
export interface BiasFault extends SensorFaultFrame {
  readonly kind: 'bias';
  readonly parameters: {
    /** In the unit of the channel. */
    readonly size: number;
    /** Time in which it grows to its size; 0: at once [s]. */
    readonly rise: number;
  };
}

export function readBias(list: ProblemList, json: unknown, frame: SensorFaultFrame): BiasFault | undefined {
  const fields = readFields(list, json, 'parameters', ['size'], ['rise']);
  const size = readNumber(list, fields?.size, 'parameters.size', OFFSET);
  const rise = fields?.rise === undefined ? 0 : readNumber(list, fields.rise, 'parameters.rise', SECONDS);
  if (size === undefined || rise === undefined) return undefined;
  return { ...frame, kind: 'bias', parameters: { size, rise } };
}

export function applyBias(fault: BiasFault, { tick }: FaultMoment, reading: Reading): void {
  const { size, rise } = fault.parameters;
  const since = (tick - fault.fromTick) * TICK_DT;
  const added = since >= rise ? size : (size * since) / rise;
  for (let channel = 0; channel < reading.values.length; channel++)
    if (hitsChannel(fault, channel)) reading.values[channel]! += added;
}
