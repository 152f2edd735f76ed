import { ENTERING_RATE } from '../../server/rooms/index.ts';

/** How many attempts to open or join may have been taken from one address since this was called, however slow the machine is. */
export function countAttempts(): () => number {
  const begunMs = performance.now();
  return () => ENTERING_RATE.burst + (ENTERING_RATE.perSecond * (performance.now() - begunMs)) / 1000;
}
