import { readFields, readNumber, type ProblemList } from '../fieldReader.ts';
import { TICK_RATE } from '../world/constants.ts';
import type { SensorFaultFrame } from './fault.ts';

/** No delay may be longer: so many samples the sensors remember [tick]. */
export const LONGEST_DELAY_TICKS = 3 * TICK_RATE;

const LATE = { least: 0, most: LONGEST_DELAY_TICKS / TICK_RATE, unit: 's' } as const;

/** Reports come as often as before, each with an older sample, and none tells its age. Acts on the source as a whole. */
export interface DelayFault extends SensorFaultFrame {
  readonly kind: 'delay';
  readonly parameters: {
    /** On top of the sensor's own latency; rounded up to whole samples [s]. */
    readonly by: number;
  };
}

export function readDelay(list: ProblemList, json: unknown, frame: SensorFaultFrame): DelayFault | undefined {
  const fields = readFields(list, json, 'parameters', ['by']);
  const by = readNumber(list, fields?.by, 'parameters.by', LATE);
  if (by === undefined) return undefined;
  return { ...frame, kind: 'delay', parameters: { by } };
}
