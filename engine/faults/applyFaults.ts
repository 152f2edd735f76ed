import type { Reading } from '../sensors/reading.ts';
import { CHANNELS, type Source } from '../sensors/sources.ts';
import { TICK_RATE } from '../world/constants.ts';
import { applyBias } from './bias.ts';
import { applyDrift } from './drift.ts';
import { applyFalseInvalid } from './falseInvalid.ts';
import { applyFalseValid } from './falseValid.ts';
import type { Fault } from './fault.ts';
import { hitsChannel } from './faultedChannels.ts';
import type { FaultMoment } from './faultMoment.ts';
import { applyIndicationAbsent } from './indicationAbsent.ts';
import { isActive } from './isActive.ts';
import { applyNoise } from './noise.ts';
import { applySpike } from './spike.ts';

/** Whether a report of the source fails to come in this tick. */
export function isSilent(faults: readonly Fault[], source: Source, tick: number): boolean {
  for (let i = 0; i < faults.length; i++) {
    const fault = faults[i]!;
    if (fault.kind === 'noData' && fault.source === source && isActive(fault, tick)) return true;
  }
  return false;
}

/** How much older than usual a report of the source is in this tick: delays do not add up, the longest counts [tick]. */
export function delayTicks(faults: readonly Fault[], source: Source, tick: number): number {
  let ticks = 0;
  for (let i = 0; i < faults.length; i++) {
    const fault = faults[i]!;
    if (fault.kind === 'delay' && fault.source === source && isActive(fault, tick))
      ticks = Math.max(ticks, Math.round(fault.parameters.by * TICK_RATE));
  }
  return ticks;
}

/** Which channels of the source are frozen in this tick: one bit a channel, the first the lowest. */
export function frozenChannels(faults: readonly Fault[], source: Source, tick: number): number {
  let bits = 0;
  for (let i = 0; i < faults.length; i++) {
    const fault = faults[i]!;
    if (fault.kind !== 'freeze' || fault.source !== source || !isActive(fault, tick)) continue;
    for (let channel = 0; channel < CHANNELS[source].length; channel++)
      if (hitsChannel(fault, channel)) bits |= 1 << channel;
  }
  return bits;
}

/**
 * Lays the other faults on a report that has just come, one after the other in the order of the list; `reading` is changed in place.
 * What is silent, late or frozen the sensors see to before.
 */
export function applyFaults(faults: readonly Fault[], moment: FaultMoment, reading: Reading): void {
  for (let i = 0; i < faults.length; i++) {
    const fault = faults[i]!;
    if (!isActive(fault, moment.tick)) continue;
    if (fault.kind === 'indicationAbsent') {
      if (moment.source === 'legIndications') applyIndicationAbsent(fault, reading);
    } else if (fault.source === moment.source) applyFault(fault, moment, reading);
  }
}

function applyFault(fault: Fault, moment: FaultMoment, reading: Reading): void {
  if (fault.kind === 'bias') applyBias(fault, moment, reading);
  else if (fault.kind === 'drift') applyDrift(fault, moment, reading);
  else if (fault.kind === 'noise') applyNoise(fault, moment, reading);
  else if (fault.kind === 'spike') applySpike(fault, moment, reading);
  else if (fault.kind === 'falseValid') applyFalseValid(reading);
  else if (fault.kind === 'falseInvalid') applyFalseInvalid(reading);
}
