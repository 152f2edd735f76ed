import { createTicker, MOST_CATCH_UP, TICK_MS } from '../../server/rooms/index.ts';

/** The ticker of a process whose tables are measured, with the account of how late its steps are and what the process takes; see manyTables.ts. */

/** What the process took since it was asked before. */
export interface Spent {
  /** Of each step, against the schedule of its table [ms]. */
  readonly lateMs: readonly number[];
  /** Of the process [us]. */
  readonly processorUs: number;
  /** Of the process [kB]. */
  readonly residentKb: number;
}

let lateMs: number[] = [];
let before = process.cpuUsage();

export const measuredTicker = createTicker({
  // what is dropped comes never
  onBacklog: (steps) => lateMs.push(...Array.from({ length: steps }, () => MOST_CATCH_UP * TICK_MS)),
  onStep: (late) => lateMs.push(late),
});

/** Says to the parent process that all is ready, then at each of its messages what was spent; ends with it. */
export function account(ready: string): void {
  process.on('message', () => process.send?.(spent()));
  process.on('disconnect', () => process.exit(0));
  process.send?.(ready);
}

function spent(): Spent {
  const { user, system } = process.cpuUsage(before);
  before = process.cpuUsage();
  const late = lateMs;
  lateMs = [];
  return { lateMs: late, processorUs: user + system, residentKb: process.memoryUsage().rss / 1024 };
}
