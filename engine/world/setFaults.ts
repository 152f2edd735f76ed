import type { Fault } from '../faults/fault.ts';
import type { Descent } from './descentRecord.ts';

/**
 * What is wrong from the next tick on: all of it, each for the ticks that it says. Between two ticks only; whoever keeps a record of the descent keeps what was
 * dealt, and before which tick.
 */
export function setFaults(descent: Descent, faults: readonly Fault[]): void {
  descent.faults = faults;
}
