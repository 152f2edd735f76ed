import { assert } from '../assert.ts';
import type { Fault } from '../faults/fault.ts';
import type { Descent } from './descentRecord.ts';

/**
 * Lets something go wrong from the next tick on or later. Between two ticks only; whoever keeps a record of the descent keeps what was dealt, and before
 * which tick.
 */
export function dealFault(descent: Descent, fault: Fault): void {
  const { tick, faults } = descent;
  assert(fault.fromTick > tick, `a fault begins after tick ${tick}, which is over, came ${fault.fromTick}`);
  faults.push(fault);
}
