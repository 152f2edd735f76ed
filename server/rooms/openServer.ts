import { createServer, type Server as HttpServer } from 'node:http';
import { networkInterfaces } from 'node:os';
import { defineRoom, defineServer, matchMaker } from '@colyseus/core';
import { WebSocketTransport } from '@colyseus/ws-transport';
import type { PlanChoice, TableModel, TablePlan } from '../../engine/table/index.ts';
import type { ServerConfig } from '../config.ts';
import { guardServer, networkOrigins, serveClient, serveLogbook } from '../http/index.ts';
import { ClientSocket } from '../lines/index.ts';
import { openLogbook } from '../logbook/index.ts';
import { NO_JOURNAL, openJournal, openRunShelf, type Journal, type RunShelf } from '../storage/index.ts';
import { openForkPool } from '../workers/forkPool.ts';
import { openRunPool } from '../workers/runPool.ts';
import { createBacklogReport } from './backlogReport.ts';
import { TableRoom, type RoomServices } from './TableRoom.ts';
import { createTableRegistry } from './tableRegistry.ts';
import { createTicker, type Ticker } from './ticker.ts';

/** Largest message from a client [bytes]; the longest command is under 100. Past this the line is cut. */
const LARGEST_MESSAGE = 2048;

/** How often a line is tried, and after how many misses it counts as dropped: 8 s at the latest. */
const HEARTBEAT = { pingInterval: 4000, pingMaxRetries: 1 } as const;

export interface RunningServer {
  /** The port that was given, by the caller or by the system. */
  readonly port: number;
  /** Closes every table and every line; resolved when nothing runs any more. */
  close(): Promise<void>;
}

/** What the server plays, and where it reports. */
export interface ServerParts {
  readonly model: TableModel;
  /** Of the next table to be opened, for what its opener chose; without a choice, the server's own. */
  readonly plan: (choice?: PlanChoice, recorded?: unknown) => TablePlan;
  /** Gets one line for each thing worth a person's notice. */
  readonly report: (line: string) => void;
  /** A test steps the tables itself. */
  readonly ticker?: Ticker;
}

/**
 * Serves the built client, the health of the server and all tables on one port. Rejects when the port cannot be had.
 * One server a process: the room library keeps its matchmaking in module state.
 */
export async function openServer(config: ServerConfig, parts: ServerParts): Promise<RunningServer> {
  const forks = openForkPool();
  const registry = createTableRegistry({ mostTables: config.mostTables });
  const services: RoomServices = {
    registry,
    model: parts.model,
    plan: parts.plan,
    journal: journalFor(config, parts.report),
    flyFork: (request) => forks.fly(request),
    takenUp: undefined,
    seatKeptSeconds: config.seatKeptSeconds,
    ticker: parts.ticker ?? createTicker({ onBacklog: createBacklogReport(parts.report) }),
    onFault: (fault, where) => parts.report(`Fault in ${where}: ${fault.stack ?? fault.message}`),
  };
  const shelf = shelfFor(config, services.journal);
  const runs = openRunPool();
  const stopExpiring = expireDaily(services.journal, config.recordDays);
  // only the ways in that a client of ours uses, and from no other origin
  Object.assign(matchMaker.controller, {
    exposedMethods: ['create', 'joinById'],
    DEFAULT_CORS_HEADERS: {},
    getCorsHeaders: () => ({}),
  });

  const http = createServer();
  const server = defineServer({
    greet: false,
    gracefullyShutdown: false,
    logger: quietLogger(parts.report),
    transport: new WebSocketTransport({
      server: http,
      WebSocket: ClientSocket,
      maxPayload: LARGEST_MESSAGE,
      ...HEARTBEAT,
    }),
    rooms: { table: defineRoom(TableRoom, { services }) },
    express: (app) => {
      const { administratorKey, recordDays } = config;
      const { onFault } = services;
      serveLogbook(app, shelf && openLogbook({ shelf, pool: runs, administratorKey, recordDays, onFault }));
      serveClient(app, {
        folder: config.clientFolder,
        openTables: () => registry.size,
        origins: () => originsOf(http),
      });
    },
  });
  await takeUpTables(services, parts.report);
  await listen(http, () => server.listen(config.port, config.host));
  guardServer(http);
  const address = http.address();
  return {
    port: typeof address === 'object' && address !== null ? address.port : config.port,
    async close() {
      await server.gracefullyShutdown(false);
      http.closeAllConnections();
      stopExpiring();
      await runs.close();
      shelf?.close();
      services.journal.close();
      await forks.close();
    },
  };
}

const DAY_MS = 24 * 3600 * 1000;

/** Deletes what has expired, now and once a day; returns what stops that. */
function expireDaily(journal: Journal, recordDays: number): () => void {
  const expire = () => void journal.expire(recordDays * DAY_MS);
  expire();
  const timer = setInterval(expire, DAY_MS);
  timer.unref();
  return () => clearInterval(timer);
}

function journalFor({ recordsFolder }: ServerConfig, report: (line: string) => void): Journal {
  return recordsFolder === undefined ? NO_JOURNAL : openJournal({ folder: recordsFolder, report });
}

/** Only where this server has the records: another one may. */
function shelfFor({ recordsFolder }: ServerConfig, journal: Journal): RunShelf | undefined {
  return recordsFolder === undefined || journal === NO_JOURNAL ? undefined : openRunShelf(recordsFolder);
}

/** Before anybody can ask for them: a table that is not there yet would be taken for one that is gone. */
async function takeUpTables(services: RoomServices, report: (line: string) => void): Promise<void> {
  await matchMaker.onReady;
  for (const table of services.journal.unfinished()) {
    services.takenUp = table;
    await matchMaker.createRoom('table', {}).catch((error: unknown) => {
      report(error instanceof Error ? error.message : String(error));
    });
  }
}

function originsOf(http: HttpServer): readonly string[] {
  const address = http.address();
  return typeof address === 'object' && address !== null ? networkOrigins(networkInterfaces(), address) : [];
}

/** The library reports a taken port to its log and never settles; so it is listened for here. */
function listen(http: HttpServer, start: () => Promise<unknown>): Promise<void> {
  return new Promise((resolve, reject) => {
    http.removeAllListeners('error');
    http.once('error', reject);
    start().then(() => resolve(), reject);
  });
}

/** The library's own messages, as lines; its chatter and its traces of refusals stay out. */
function quietLogger(report: (line: string) => void) {
  const say = (...parts: readonly unknown[]) => report(parts.map(String).join(' ').split('\n')[0] ?? '');
  return { debug: hush, info: hush, trace: hush, warn: say, error: say };
}

function hush(): void {}
