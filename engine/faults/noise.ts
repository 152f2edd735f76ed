import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import { addressedDeviate } from '../sensors/noise.ts';
import { sourceIndex, type Reading } from '../sensors/reading.ts';
import type { SensorFaultFrame } from './fault.ts';
import type { FaultMoment } from './faultMoment.ts';
import { hitsChannel } from './faultedChannels.ts';
import { AMOUNT } from './faultRanges.ts';
import { NOISE_STREAM } from './faultStreams.ts';

/** Adds white noise on top of the sensor's own. Two noise faults on one channel draw the same numbers. */
export interface NoiseFault extends SensorFaultFrame {
  readonly kind: 'noise';
  readonly parameters: {
    /** Standard deviation, in the unit of the channel. */
    readonly sigma: number;
  };
}

export function readNoise(list: ProblemList, json: unknown, frame: SensorFaultFrame): NoiseFault | undefined {
  const fields = readFields(list, json, 'parameters', ['sigma']);
  const sigma = readNumber(list, fields?.sigma, 'parameters.sigma', AMOUNT);
  if (sigma === undefined) return undefined;
  return { ...frame, kind: 'noise', parameters: { sigma } };
}

export function applyNoise(fault: NoiseFault, { source, tick, key }: FaultMoment, reading: Reading): void {
  const stream = NOISE_STREAM + sourceIndex(source);
  for (let channel = 0; channel < reading.values.length; channel++)
    if (hitsChannel(fault, channel))
      reading.values[channel]! += fault.parameters.sigma * addressedDeviate(key, stream, tick, channel);
}
