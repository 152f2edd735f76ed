import { readdirSync } from 'node:fs';
import { playedModel } from '../../engine/table/index.ts';
import { firstLanding } from '../../levels/index.ts';
import { createTicker, MOST_CATCH_UP, TICK_MS } from '../../server/rooms/index.ts';
import { startTestServer } from '../support/tableServer.ts';

/** A server in a process of its own, with its records in the folder given, which says what it holds; see soak.ts. Run with --expose-gc. */

/** After what nobody uses was collected. */
export interface ServerHolds {
  /** [B] */
  readonly heap: number;
  readonly resident: number;
  /** Timers, sockets and the like. */
  readonly handles: number;
  /** Open files and sockets; 0 where the system does not tell. */
  readonly descriptors: number;
  /** Of the steps since it was asked before, against the schedule of their tables: the 99th percentile [ms]. */
  readonly lateMs: number;
}

let late: number[] = [];

function holds(): ServerHolds {
  globalThis.gc?.();
  const sorted = late.toSorted((a, b) => a - b);
  late = [];
  const { heapUsed, rss } = process.memoryUsage();
  return {
    heap: heapUsed,
    resident: rss,
    handles: process.getActiveResourcesInfo().length,
    descriptors: process.platform === 'linux' ? readdirSync('/proc/self/fd').length : 0,
    lateMs: sorted[Math.floor(0.99 * (sorted.length - 1))] ?? 0,
  };
}

const [, , folder = 'none', port = '0'] = process.argv;
const server = await startTestServer(
  {
    ticker: createTicker({
      onBacklog: (steps) => late.push(...Array.from({ length: steps }, () => MOST_CATCH_UP * TICK_MS)),
      onStep: (stepLate) => late.push(stepLate),
    }),
    model: playedModel,
    plan: () => firstLanding(1),
  },
  // an hour shortened: a place that nobody comes back to is soon given up
  { KILTER_RECORDS: folder, PORT: port, KILTER_SEAT_KEPT_SECONDS: '20' },
);
process.on('message', () => process.send?.(holds()));
process.on('disconnect', () => process.exit(0));
process.send?.(server.origin);
