import type { Phase } from './descent.ts';
import type { Descent } from './descentRecord.ts';
import { lowestFoot } from './feet.ts';
import { APPROACH_ENDS, CONTACT_TICKS, FINAL_DROP_BELOW } from './thresholds.ts';

/** Brings the phase up to date after a tick. 'at rest' comes from the outcome alone. */
export function followPhase(descent: Descent): void {
  const phase = phaseNow(descent);
  if (phase === descent.phase) return;
  descent.phase = phase;
  descent.events.push({ kind: 'phase', tick: descent.tick, phase });
}

function phaseNow(descent: Descent): Phase {
  const { contact, tick, phase } = descent;
  if (contact.firstTick >= 0) {
    const isMeeting = !contact.bothDown && tick - contact.firstTick < CONTACT_TICKS;
    // the tick of first contact always shows as contact
    return isMeeting || tick === contact.firstTick ? 'contact' : 'settling';
  }
  const height = lowestFoot(descent);
  if (descent.commanded.thrustPercent === 0 && height <= FINAL_DROP_BELOW) return 'final drop';
  // an approach that climbs back above its end stays a terminal descent
  return phase === 'approach' && height > APPROACH_ENDS ? 'approach' : 'terminal descent';
}
