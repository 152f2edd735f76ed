import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import { addressedUniform } from '../sensors/noise.ts';
import { sourceIndex, type Reading } from '../sensors/reading.ts';
import type { SensorFaultFrame } from './fault.ts';
import type { FaultMoment } from './faultMoment.ts';
import { hitsChannel } from './faultedChannels.ts';
import { OFFSET, SHARE } from './faultRanges.ts';
import { SPIKE_STREAM } from './faultStreams.ts';

/** Now and then one report is far off. */
export interface SpikeFault extends SensorFaultFrame {
  readonly kind: 'spike';
  readonly parameters: {
    /** What is added, up or down with equal chance, in the unit of the channel. */
    readonly size: number;
    /** Share of the reports that are hit [-]. */
    readonly chance: number;
  };
}

export function readSpike(list: ProblemList, json: unknown, frame: SensorFaultFrame): SpikeFault | undefined {
  const fields = readFields(list, json, 'parameters', ['size', 'chance']);
  const size = readNumber(list, fields?.size, 'parameters.size', OFFSET);
  const chance = readNumber(list, fields?.chance, 'parameters.chance', SHARE);
  if (size === undefined || chance === undefined) return undefined;
  return { ...frame, kind: 'spike', parameters: { size, chance } };
}

/** One number decides both: the lower half of the chance is a spike down, the upper half one up. */
export function applySpike(fault: SpikeFault, { source, tick, key }: FaultMoment, reading: Reading): void {
  const { size, chance } = fault.parameters;
  const drawn = addressedUniform(key, SPIKE_STREAM + sourceIndex(source), tick, 0);
  if (drawn >= chance) return;
  const added = drawn < chance / 2 ? -size : size;
  for (let channel = 0; channel < reading.values.length; channel++)
    if (hitsChannel(fault, channel)) reading.values[channel]! += added;
}
