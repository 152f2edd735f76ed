/** Time between two lines about ticks that were dropped [ms]. */
const REPORT_EVERY_MS = 10_000;

/**
 * Turns dropped ticks into few lines: the first at once, then the sum of what came since, at most one line in ten
 * seconds. A machine that is too slow drops ticks of every table many times a second.
 */
export function createBacklogReport(report: (line: string) => void, now: () => number = () => performance.now()) {
  let dropped = 0;
  let reportedMs: number | undefined;
  return (ticks: number): void => {
    dropped += ticks;
    const nowMs = now();
    if (reportedMs !== undefined && nowMs - reportedMs < REPORT_EVERY_MS) return;
    report(`This machine is too slow or too busy: ${dropped} ticks were dropped, and descents ran slower for it.`);
    dropped = 0;
    reportedMs = nowMs;
  };
}
