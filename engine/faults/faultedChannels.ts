import { CHANNELS } from '../sensors/sources.ts';
import type { SensorFaultFrame } from './fault.ts';

/** Whether a sensor fault acts on this channel of its source, counted from 0. */
export function hitsChannel({ source, channel }: SensorFaultFrame, index: number): boolean {
  return channel === undefined || CHANNELS[source][index] === channel;
}
