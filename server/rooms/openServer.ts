import { createServer, type Server as HttpServer } from 'node:http';
import { networkInterfaces } from 'node:os';
import { setTimeout } from 'node:timers/promises';
import { defineRoom, defineServer, matchMaker } from '@colyseus/core';
import { nanoid } from 'nanoid';
import type { PlanChoice, TableModel, TablePlan } from '../../engine/table/index.ts';
import type { ServerConfig } from '../config.ts';
import { libraryLine, type Report } from '../log.ts';
import {
  createTally,
  guardServer,
  networkOrigins,
  serveClient,
  serveLines,
  serveLogbook,
  serveState,
  serveVotes,
} from '../http/index.ts';
import { TableTransport } from '../lines/index.ts';
import { openLogbook } from '../logbook/index.ts';
import { NO_JOURNAL, openJournal, openRunShelf, type Journal, type RunShelf } from '../storage/index.ts';
import { createVotes } from '../votes/index.ts';
import { openForkPool } from '../workers/forkPool.ts';
import { openRunPool } from '../workers/runPool.ts';
import { createBacklogReport } from './backlogReport.ts';
import { createEntrance } from './entrance.ts';
import { ALONE, joinProcesses } from './processes.ts';
import type { RoomServices } from './roomServices.ts';
import { TableRoom } from './TableRoom.ts';
import { createTableRegistry } from './tableRegistry.ts';
import { createTicker, type Ticker } from './ticker.ts';

/** How long the tables have to be closed in when the server ends [ms]. */
const FAREWELL_MS = 3000;

export interface RunningServer {
  /** The port that was given, by the caller or by the system. */
  readonly port: number;
  /** Opens no more tables, lets nobody in, and says that it is not ready; who is here plays on. */
  drain(): void;
  /** The same, and closes every table and every line; resolved when nothing runs any more. */
  close(): Promise<void>;
}

/** What the server plays, and where it reports. */
export interface ServerParts {
  readonly model: TableModel;
  /** Of the next table to be opened, for what its opener chose; without a choice, the server's own. */
  readonly plan: (choice?: PlanChoice, recorded?: unknown) => TablePlan;
  readonly report: Report;
  /** A test steps the tables itself. */
  readonly ticker?: Ticker;
}

/**
 * Serves the built client, the health of the server and all tables on one port. Rejects when the port cannot be had.
 * One server a process: the room library keeps its matchmaking in module state.
 */
export async function openServer(config: ServerConfig, parts: ServerParts): Promise<RunningServer> {
  const { report } = parts;
  let isDraining = false;
  const { redis, publicAddress } = config;
  const processes = redis === undefined ? ALONE : await joinProcesses({ redis, publicAddress });
  const forks = openForkPool();
  const registry = createTableRegistry({ mostTables: config.mostTables, mostPerAddress: config.tablesPerAddress });
  const dropped = { ticks: 0 };
  const services = servicesOf(
    config,
    parts,
    { registry, processes, flyFork: (request) => forks.fly(request) },
    dropped,
  );
  const shelf = shelfFor(config, services.journal);
  const runs = openRunPool();
  const stopExpiring = expireDaily(services.journal, config.recordDays);
  // only the ways in that a client of ours uses, and from no other origin
  Object.assign(matchMaker.controller, {
    ...createEntrance({ registry, processes, isDraining: () => isDraining }),
    DEFAULT_CORS_HEADERS: {},
    getCorsHeaders: () => ({}),
  });

  const http = createServer();
  const transport = new TableTransport(http);
  const lines = createTally(config.linesPerAddress);
  const server = defineServer({
    greet: false,
    gracefullyShutdown: false,
    logger: quietLogger((line) => report('library', line)),
    transport,
    ...processes.library,
    rooms: { table: defineRoom(TableRoom, { services }) },
    express: (app) => {
      const { administratorKey, recordDays } = config;
      const { onFault } = services;
      serveLogbook(app, shelf && openLogbook({ shelf, pool: runs, administratorKey, recordDays, onFault }));
      serveState(app, {
        administratorKey,
        state: () => ({
          tables: registry.joined,
          lines: matchMaker.stats.local.ccu,
          droppedTicks: dropped.ticks,
          isDraining,
          keepsRecords: services.journal.canWrite(),
          reachesOthers: processes.canReach(),
        }),
      });
      serveLines(app, { tally: lines, takeIn: (line, request) => transport.takeIn(line, request) });
      serveVotes(app, createVotes());
      serveClient(app, {
        folder: config.clientFolder,
        origins: () => originsOf(http),
      });
    },
  });
  const takeUp = () => takeUpTables(services, (line) => report('records', line));
  await takeUp();
  await listen(http, () => server.listen(config.port, config.host));
  guardServer(http, config, lines);
  const stopWatching = redis === undefined ? () => undefined : watchOthers(takeUp);
  const address = http.address();
  return {
    port: typeof address === 'object' && address !== null ? address.port : config.port,
    drain: () => void (isDraining = true),
    async close() {
      isDraining = true;
      stopWatching();
      // each table is written down and its members are told first; who does not take it in is not waited for
      await Promise.race([server.gracefullyShutdown(false), setTimeout(FAREWELL_MS)]);
      lines.end();
      http.closeAllConnections();
      stopExpiring();
      await runs.close();
      shelf?.close();
      services.journal.close();
      await forks.close();
    },
  };
}

function servicesOf(
  config: ServerConfig,
  { model, plan, report, ticker }: ServerParts,
  parts: Pick<RoomServices, 'registry' | 'processes' | 'flyFork'>,
  dropped: { ticks: number },
): RoomServices {
  const tell = createBacklogReport((line) => report('late', line));
  const onBacklog = (ticks: number) => {
    dropped.ticks += ticks;
    tell(ticks);
  };
  return {
    ...parts,
    model,
    plan,
    journal: journalFor(config, (line) => report('records', line)),
    takenUp: new Map(),
    seatKeptSeconds: config.seatKeptSeconds,
    idleMinutes: config.idleMinutes,
    ticker: ticker ?? createTicker({ onBacklog }),
    onFault: (fault, where) => report('fault', `Fault in ${where}: ${fault.stack ?? fault.message}`),
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

function journalFor({ recordsFolder, redis }: ServerConfig, report: (line: string) => void): Journal {
  if (recordsFolder === undefined) return NO_JOURNAL;
  return openJournal({ folder: recordsFolder, report, isShared: redis !== undefined });
}

/** Only where this server has the records: another one may. */
function shelfFor({ recordsFolder }: ServerConfig, journal: Journal): RunShelf | undefined {
  return recordsFolder === undefined || !journal.hasFile ? undefined : openRunShelf(recordsFolder);
}

/** Before anybody can ask for them: a table that is not there yet would be taken for one that is gone. */
async function takeUpTables(services: RoomServices, report: (line: string) => void): Promise<void> {
  await matchMaker.onReady;
  for (const table of services.journal.unfinished()) {
    const key = nanoid();
    services.takenUp.set(key, table);
    await matchMaker.createRoom('table', { takeUp: key }).catch((error: unknown) => {
      report(error instanceof Error ? error.message : String(error));
    });
  }
}

/** How often it is looked whether another process has ended [ms]. */
const WATCH_MS = 1000;

/** Takes up what others leave; returns what stops that. */
function watchOthers(takeUp: () => Promise<void>): () => void {
  let isAtIt = false;
  const look = async () => {
    if (isAtIt) return;
    isAtIt = true;
    await takeUp().finally(() => (isAtIt = false));
  };
  const timer = setInterval(() => void look(), WATCH_MS);
  return () => clearInterval(timer);
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

/** The library's own messages, as lines; its chatter stays out. */
function quietLogger(report: (line: string) => void) {
  const say = (...parts: readonly unknown[]) => report(libraryLine(parts));
  return { debug: hush, info: hush, trace: hush, warn: say, error: say };
}

function hush(): void {}
