import { describe, expect, it } from 'vitest';
import { MOST_CATCH_UP, TICK_MS, createBacklogReport, createTicker, type Timing } from '../../../server/rooms/index.ts';

/** A clock that only moves when something sleeps or naps, and can be late on purpose. */
function createHandTiming() {
  let nowMs = 1000;
  let due: { readonly atMs: number; readonly wake: () => void } | undefined;
  const timing: Timing = {
    now: () => nowMs,
    sleep: (ms, wake) => (due = { atMs: nowMs + ms, wake }),
    nap: (ms, wake) => (due = { atMs: nowMs + ms, wake }),
  };
  return {
    timing,
    /** Runs until that much time has passed; every wake-up comes `lateMs` late. */
    pass(ms: number, lateMs = 0) {
      const endMs = nowMs + ms;
      while (due !== undefined && due.atMs + lateMs <= endMs) {
        const { atMs, wake } = due;
        due = undefined;
        nowMs = Math.max(nowMs, atMs + lateMs);
        wake();
      }
      nowMs = endMs;
    },
    /** Something else had the machine for so long. */
    stall: (ms: number) => (nowMs += ms),
    isWaiting: () => due !== undefined,
    now: () => nowMs,
  };
}

describe('the ticker', () => {
  it('says of each step how late it is', () => {
    const hand = createHandTiming();
    const late: number[] = [];
    const ticker = createTicker({ timing: hand.timing, onBacklog: () => undefined, onStep: (ms) => late.push(ms) });
    ticker.add(() => undefined);
    hand.pass(100);
    expect(Math.max(...late)).toBeLessThan(0.1);
    hand.stall(3 * TICK_MS);
    hand.pass(1);
    expect(Math.max(...late)).toBeGreaterThan(1.9 * TICK_MS);
    expect(Math.max(...late)).toBeLessThan(3.1 * TICK_MS);
  });

  it('keeps its rate over minutes, however late it is woken each time', () => {
    const hand = createHandTiming();
    const ticker = createTicker({ timing: hand.timing, onBacklog: () => expect.unreachable() });
    let steps = 0;
    ticker.add(() => (steps += 1));
    hand.pass(60_000, 0.9);
    expect(steps).toBeGreaterThanOrEqual(3598);
    expect(steps).toBeLessThanOrEqual(3600);
  });

  it('makes each step within a fraction of a millisecond of its time when woken in time', () => {
    const hand = createHandTiming();
    const ticker = createTicker({ timing: hand.timing, onBacklog: () => expect.unreachable() });
    const at: number[] = [];
    ticker.add(() => at.push(hand.now()));
    hand.pass(1000);
    const intervals = at.slice(1).map((ms, i) => ms - (at[i] ?? 0));
    expect(intervals.length).toBeGreaterThan(55);
    for (const interval of intervals) expect(Math.abs(interval - TICK_MS)).toBeLessThan(0.21);
  });

  it('staggers tables, so that no two of ten are due within a fifth of their even spacing', () => {
    const hand = createHandTiming();
    const ticker = createTicker({ timing: hand.timing, onBacklog: () => expect.unreachable() });
    const phases: number[] = [];
    for (let table = 0; table < 10; table += 1) {
      let first = true;
      ticker.add(() => {
        if (first) phases.push(hand.now() % TICK_MS);
        first = false;
      });
    }
    hand.pass(100);
    const sorted = phases.toSorted((a, b) => a - b);
    expect(sorted).toHaveLength(10);
    const gaps = sorted.map((phase, i) => (sorted[(i + 1) % 10] ?? 0) - phase + (i === 9 ? TICK_MS : 0));
    expect(Math.min(...gaps)).toBeGreaterThan(TICK_MS / 50);
  });

  it('makes up for a short stall, drops the rest of a long one, and says how much', () => {
    const dropped: number[] = [];
    const hand = createHandTiming();
    const ticker = createTicker({ timing: hand.timing, onBacklog: (count) => dropped.push(count) });
    let steps = 0;
    ticker.add(() => (steps += 1));
    hand.pass(100);
    const before = steps;
    hand.stall(3 * TICK_MS);
    hand.pass(1);
    expect(steps - before).toBeGreaterThanOrEqual(3);
    expect(dropped).toEqual([]);

    const mid = steps;
    hand.stall(1000);
    hand.pass(1);
    expect(steps - mid).toBe(MOST_CATCH_UP);
    expect(dropped).toHaveLength(1);
    expect(dropped[0]).toBeGreaterThanOrEqual(54);
    expect(dropped[0]).toBeLessThanOrEqual(56);
    const after = steps;
    hand.pass(1000);
    expect(steps - after).toBeGreaterThanOrEqual(59);
    expect(steps - after).toBeLessThanOrEqual(61);
  });

  it('stops stepping what was taken away, and rests when nothing is left', () => {
    const hand = createHandTiming();
    const ticker = createTicker({ timing: hand.timing, onBacklog: () => expect.unreachable() });
    let steps = 0;
    const stop = ticker.add(() => (steps += 1));
    hand.pass(100);
    stop();
    const before = steps;
    hand.pass(200);
    expect(steps).toBe(before);
    expect(hand.isWaiting()).toBe(false);
    ticker.add(() => (steps += 1));
    hand.pass(100);
    expect(steps).toBeGreaterThan(before);
  });
});

describe('the report of dropped ticks', () => {
  it('comes at once, then at most every ten seconds with the sum of what came between', () => {
    let nowMs = 0;
    const lines: string[] = [];
    const note = createBacklogReport(
      (line) => lines.push(line),
      () => nowMs,
    );
    note(3);
    for (nowMs = 100; nowMs < 10_000; nowMs += 100) note(1);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain('3 ticks were dropped');
    nowMs = 10_000;
    note(1);
    expect(lines).toHaveLength(2);
    expect(lines[1]).toContain('100 ticks were dropped');
  });
});
