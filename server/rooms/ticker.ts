/** Calls every table's step at a steady 60 a second. */
export interface Ticker {
  /** Adds a step; returns the function that takes it away again. A step must not throw. */
  add(step: () => void): () => void;
}

/** Of simulated and of real time; the engine's tick. [ms] */
export const TICK_MS = 1000 / 60;

/** Most steps that one table makes up for at once; what is beyond is dropped, so that one late table does not make all late. */
export const MOST_CATCH_UP = 5;

/** Below this no timer is set, since one wakes up to a millisecond late: the loop naps [ms]. */
const NAPS_BELOW_MS = 1.5;

/** Longest nap: so long nothing that comes in is looked at [ms]. From one place to the next, so that many tables wake the process once for each. */
const LONGEST_NAP_MS = 1.1;

/** Longest sleep, so that a table added meanwhile is not kept waiting [ms]. */
const LONGEST_SLEEP_MS = 50;

/** Fraction of a tick between the schedules of one table and the next: the golden ratio spreads any number of them evenly. */
const STAGGER = 0.618034;

/** Schedules begin at so many places within a tick: many tables at which nothing moves would otherwise wake the process all the time. */
const PLACES = 16;

interface Slot {
  readonly step: () => void;
  /** Time of step 0 on this slot's own schedule [ms]. */
  readonly startMs: number;
  /** Steps made or dropped so far. */
  count: number;
  /** Time of the next step [ms]. */
  dueMs: number;
}

/** Time and waiting, so that a test can have both at will. */
export interface Timing {
  readonly now: () => number;
  readonly sleep: (ms: number, wake: () => void) => void;
  /** To be on time where a timer would not be. */
  readonly nap: (ms: number, wake: () => void) => void;
}

/** Nobody ever wakes who waits on it. */
const BED = new Int32Array(new SharedArrayBuffer(4));

const SYSTEM_TIMING: Timing = {
  now: () => performance.now(),
  sleep: (ms, wake) => void setTimeout(wake, ms),
  nap(ms, wake) {
    if (ms > 0) Atomics.wait(BED, 0, 0, ms);
    // what came in meanwhile is looked at first
    setImmediate(wake);
  },
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
  /** Told of each step how late it is made [ms]. */
  readonly onStep?: (lateMs: number) => void;
}): Ticker {
  const { now, sleep, nap } = options.timing ?? SYSTEM_TIMING;
  const slots = new Set<Slot>();
  const originMs = now();
  let added = 0;
  let isTurning = false;

  const turn = () => {
    if (slots.size === 0) {
      isTurning = false;
      return;
    }
    let nowMs = now();
    let nextMs = nowMs + LONGEST_SLEEP_MS;
    for (const slot of slots) {
      if (slot.dueMs <= nowMs) {
        catchUp(slot);
        nowMs = now();
      }
      nextMs = Math.min(nextMs, slot.dueMs);
    }
    const waitMs = nextMs - now();
    if (waitMs > NAPS_BELOW_MS) sleep(Math.floor(waitMs - NAPS_BELOW_MS / 3), turn);
    else nap(Math.min(waitMs, LONGEST_NAP_MS), turn);
  };

  /** Makes the steps that are due. */
  const catchUp = (slot: Slot) => {
    for (let made = 0; slot.dueMs <= now(); made += 1) {
      if (made === MOST_CATCH_UP) {
        const behind = Math.floor((now() - slot.startMs) / TICK_MS) - slot.count;
        pass(slot, behind);
        if (behind > 0) options.onBacklog(behind);
        break;
      }
      options.onStep?.(now() - slot.dueMs);
      pass(slot, 1);
      slot.step();
    }
  };

  return {
    add(step) {
      const place = Math.floor(((added * STAGGER) % 1) * PLACES) / PLACES;
      const begunTicks = Math.floor((now() - originMs) / TICK_MS);
      const startMs = originMs + (begunTicks + place) * TICK_MS;
      const slot: Slot = { step, startMs, count: 0, dueMs: startMs + TICK_MS };
      added += 1;
      slots.add(slot);
      if (!isTurning) {
        isTurning = true;
        nap(0, turn);
      }
      return () => slots.delete(slot);
    },
  };
}

/** Steps that were made or dropped. From the start anew each time, so that nothing adds up. */
function pass(slot: Slot, steps: number): void {
  slot.count += steps;
  slot.dueMs = slot.startMs + (slot.count + 1) * TICK_MS;
}
