/** Calls every table's step at a steady 60 a second. */
export interface Ticker {
  /** Adds a step; returns the function that takes it away again. A step must not throw. */
  add(step: () => void): () => void;
}

/** Of simulated and of real time; the engine's tick. [ms] */
export const TICK_MS = 1000 / 60;

/** Most steps that one table makes up for at once; what is beyond is dropped, so that one late table does not make all late. */
export const MOST_CATCH_UP = 5;

/** Below this the loop turns without sleeping, since a timer wakes up to a millisecond late [ms]. */
const SPIN_MS = 1.5;

/** Longest sleep, so that a table added meanwhile is not kept waiting [ms]. */
const LONGEST_SLEEP_MS = 50;

/** Fraction of a tick between the schedules of one table and the next: the golden ratio spreads any number of them evenly. */
const STAGGER = 0.618034;

interface Slot {
  readonly step: () => void;
  /** Time of step 0 on this slot's own schedule [ms]. */
  readonly startMs: number;
  /** Steps made or dropped so far. */
  count: number;
}

/** Time and waiting, so that a test can have both at will. */
export interface Timing {
  readonly now: () => number;
  readonly sleep: (ms: number, wake: () => void) => void;
  readonly spin: (wake: () => void) => void;
}

const SYSTEM_TIMING: Timing = {
  now: () => performance.now(),
  sleep: (ms, wake) => void setTimeout(wake, ms),
  spin: (wake) => void setImmediate(wake),
};

/**
 * A ticker on an absolute schedule: step n of a table is due at its start plus n ticks, however late step n-1 came, so the
 * rate does not drift. The schedules of several tables are staggered, so that their steps do not queue behind each other.
 * (The room library's own fixed step runs on an interval timer and jitters by a whole tick.)
 */
export function createTicker(options: {
  readonly timing?: Timing;
  /** Told how many steps were dropped for one table. */
  readonly onBacklog: (steps: number) => void;
}): Ticker {
  const { now, sleep, spin } = options.timing ?? SYSTEM_TIMING;
  const slots = new Set<Slot>();
  let added = 0;
  let isTurning = false;

  const turn = () => {
    if (slots.size === 0) {
      isTurning = false;
      return;
    }
    let nextMs = now() + LONGEST_SLEEP_MS;
    for (const slot of slots) nextMs = Math.min(nextMs, catchUp(slot));
    const waitMs = nextMs - now();
    if (waitMs > SPIN_MS) sleep(Math.floor(waitMs - SPIN_MS / 3), turn);
    else spin(turn);
  };

  /** Makes the steps that are due; returns when the next one is. */
  const catchUp = (slot: Slot): number => {
    const dueMs = () => slot.startMs + (slot.count + 1) * TICK_MS;
    for (let made = 0; dueMs() <= now(); made += 1) {
      if (made === MOST_CATCH_UP) {
        const behind = Math.floor((now() - slot.startMs) / TICK_MS) - slot.count;
        slot.count += behind;
        if (behind > 0) options.onBacklog(behind);
        break;
      }
      slot.count += 1;
      slot.step();
    }
    return dueMs();
  };

  return {
    add(step) {
      const slot: Slot = { step, startMs: now() + ((added * STAGGER) % 1) * TICK_MS, count: 0 };
      added += 1;
      slots.add(slot);
      if (!isTurning) {
        isTurning = true;
        spin(turn);
      }
      return () => slots.delete(slot);
    },
  };
}
