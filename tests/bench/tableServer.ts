import { playedModel } from '../../engine/table/index.ts';
import { layPlan } from '../../levels/index.ts';
import { createTicker, MOST_CATCH_UP, TICK_MS } from '../../server/rooms/index.ts';
import { startTestServer } from '../support/tableServer.ts';

/** A server in a process of its own, which says how late its ticks are and what they take; see manyTables.ts. */

/** What the server took since it was asked before. */
export interface ServerSpent {
  /** Of each step, against the schedule of its table [ms]. */
  readonly lateMs: readonly number[];
  /** Of the process [us]. */
  readonly processorUs: number;
  /** Of the process [kB]. */
  readonly residentKb: number;
}

let lateMs: number[] = [];
let before = process.cpuUsage();

function spent(): ServerSpent {
  const { user, system } = process.cpuUsage(before);
  before = process.cpuUsage();
  const late = lateMs;
  lateMs = [];
  return { lateMs: late, processorUs: user + system, residentKb: process.memoryUsage().rss / 1024 };
}

const server = await startTestServer(
  {
    ticker: createTicker({
      // what is dropped comes never
      onBacklog: (steps) => lateMs.push(...Array.from({ length: steps }, () => MOST_CATCH_UP * TICK_MS)),
      onStep: (late) => lateMs.push(late),
    }),
    model: playedModel,
    plan(choice) {
      const plan = choice && layPlan(choice);
      if (plan?.ok !== true) throw new Error('the bench says what it plays');
      return plan.value;
    },
  },
  {
    KILTER_MOST_TABLES: '200',
    KILTER_TABLES_PER_ADDRESS: '200',
    KILTER_LINES_PER_ADDRESS: '1000',
    // the crowd comes from one machine and says of each table that it is another
    KILTER_TRUSTED_PROXIES: '127.0.0.1',
  },
);
process.on('message', () => process.send?.(spent()));
process.on('disconnect', () => process.exit(0));
process.send?.(server.origin);
