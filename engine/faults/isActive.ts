import type { FaultSpan } from './fault.ts';

/** Whether the fault acts in this tick. */
export function isActive({ fromTick, toTick }: FaultSpan, tick: number): boolean {
  return tick >= fromTick && (toTick === undefined || tick < toTick);
}
