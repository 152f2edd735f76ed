import { accept, type Result } from '../../engine/result.ts';
import type { PhoneLanding } from '../../levels/index.ts';
import { refusal, type VoteRefusal } from './refusal.ts';

/** From the presenter's word to the start: every phone has looked once more by then [ms]. */
export const LEAD_MS = 5000;

/** A phone that says nothing for so long has left [ms]. */
export const LEFT_AFTER_MS = 12_000;

/** One descent that the phones of a hall fly at the same time, each in its own page. */
export interface HallFlight {
  /** Until it starts [ms]; below 0: it has. */
  startsIn(): number;
  /** A phone says that it is still here. */
  meet(voter: string): void;
  /** The first landing of a phone counts, however often it says it. */
  land(voter: string, landing: PhoneLanding): Result<undefined, VoteRefusal>;
  /** Landings from that one on, in the order in which they came; how many still fly, and how many have left. */
  tell(from: number): Flown;
}

export interface Flown {
  readonly landings: readonly PhoneLanding[];
  readonly inAir: number;
  readonly left: number;
}

export function createFlight(pilots: readonly string[], now: () => number): HallFlight {
  const startsAtMs = now() + LEAD_MS;
  const heardAtMs = new Map(pilots.map((pilot) => [pilot, startsAtMs]));
  const landings = new Map<string, PhoneLanding>();
  return {
    startsIn: () => startsAtMs - now(),
    meet(voter) {
      if (heardAtMs.has(voter)) heardAtMs.set(voter, Math.max(startsAtMs, now()));
    },
    land(voter, landing) {
      if (!heardAtMs.has(voter)) return refusal(403, 'This phone does not fly here.');
      if (now() < startsAtMs) return refusal(409, 'The flight has not begun.');
      if (!landings.has(voter)) landings.set(voter, landing);
      return accept(undefined);
    },
    tell(from) {
      const flying = [...heardAtMs].filter(([pilot]) => !landings.has(pilot));
      const left = flying.filter(([, heardMs]) => now() - heardMs > LEFT_AFTER_MS).length;
      return { landings: [...landings.values()].slice(from), inAir: flying.length - left, left };
    },
  };
}
