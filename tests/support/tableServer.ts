import { joinSharedTable, openSharedTable, type TableLink } from '../../client/net/index.ts';
import type { PlaceStore } from '../../client/net/place.ts';
import { parseConfig, type Environment } from '../../server/config.ts';
import { openServer, type RunningServer, type ServerParts, type Ticker } from '../../server/rooms/index.ts';
import { plainModel, plainPlan } from './plainTable.ts';

export interface TestServer extends RunningServer {
  readonly origin: string;
  /** What the server reported so far. */
  readonly reports: readonly string[];
}

/** All of a test come from one address. */
export const UNBOUNDED = { KILTER_TABLES_PER_ADDRESS: '1000', KILTER_LINES_PER_ADDRESS: '10000' };

/** A server on a port of the system's choice, with the plain world unless said otherwise. */
export async function startTestServer(
  parts: Partial<ServerParts> & { readonly clientFolder?: string } = {},
  environment: Environment = {},
): Promise<TestServer> {
  const config = parseConfig({
    PORT: '0',
    HOST: '127.0.0.1',
    KILTER_RECORDS: 'none',
    ...UNBOUNDED,
    ...environment,
  });
  if (!config.ok) throw new Error(config.error.join('; '));
  const reports: string[] = [];
  const { clientFolder = config.value.clientFolder, ...given } = parts;
  const server = await openServer(
    { ...config.value, clientFolder },
    {
      model: plainModel,
      plan: () => plainPlan,
      report: (_kind, line) => reports.push(line),
      ...given,
    },
  );
  return { ...server, origin: `http://127.0.0.1:${server.port}`, reports };
}

/** A ticker that the test turns. */
export function createHandTicker(): Ticker & { turn(steps: number): void } {
  const steps = new Set<() => void>();
  return {
    add(step) {
      steps.add(step);
      return () => void steps.delete(step);
    },
    turn(count) {
      for (let i = 0; i < count; i += 1) for (const step of Array.from(steps)) step();
    },
  };
}

/** Stands for the storage of one browser tab. */
export function createTabStore(): PlaceStore {
  let place: ReturnType<PlaceStore['load']>;
  return {
    load: () => place,
    save: (saved) => void (place = saved),
    clear: () => void (place = undefined),
  };
}

/** Opens a table there, or with a code enters one, as the client does. */
export async function enterTable(origin: string, name: string, code?: string): Promise<TableLink> {
  const options = { origin, name, store: createTabStore() };
  const entered = await (code === undefined ? openSharedTable(options) : joinSharedTable({ ...options, code }));
  if (!entered.ok) throw new Error(entered.error.reason);
  return entered.value;
}

/** Resolves when the condition holds; rejects, saying what was waited for, when it does not within the time. */
export async function until(what: string, condition: () => boolean, withinMs = 5000): Promise<void> {
  const start = performance.now();
  while (!condition()) {
    if (performance.now() - start > withinMs) throw new Error(`waited ${withinMs} ms for: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}
