import { timingSafeEqual } from 'node:crypto';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import type { Application, Request } from 'express';
import { isFromHere } from './networkOrigins.ts';

/** What the server knows of itself. */
interface ServerState {
  /** Tables with somebody at them. */
  readonly tables: number;
  /** Lines to tables. */
  readonly lines: number;
  /** Ticks that tables lost because the machine was too slow, since the start. */
  readonly droppedTicks: number;
  readonly isDraining: boolean;
  /** False where records are wanted and cannot be written. */
  readonly keepsRecords: boolean;
  /** False where there ought to be other processes, and they cannot be reached. */
  readonly reachesOthers: boolean;
}

/** Whether all is well, for whoever sends people here, and figures for whoever watches over it. The figures are told to this machine, and to who has the administrator's key. */
export function serveState(
  app: Application,
  options: { readonly state: () => ServerState; readonly administratorKey: string | undefined },
): void {
  const delay = monitorEventLoopDelay({ resolution: 10 });
  delay.enable();
  app.get('/api/health', (_request, response) => {
    const state = options.state();
    const because = troubleOf(state);
    response.setHeader('Cache-Control', 'no-store');
    response.status(because === undefined ? 200 : 503);
    response.json({ ok: because === undefined, tables: state.tables, ...(because !== undefined && { because }) });
  });
  app.get('/api/metrics', (request, response, next) => {
    if (!isFromHere(request) && !hasKey(request, options.administratorKey)) {
      next();
      return;
    }
    response.setHeader('Cache-Control', 'no-store');
    response.type('text/plain; version=0.0.4').send(metricsText(options.state(), delay.percentile(99) / 1e9));
    delay.reset();
  });
}

function troubleOf({ isDraining, keepsRecords, reachesOthers }: ServerState): string | undefined {
  if (isDraining) return 'This server is being restarted.';
  if (!reachesOthers) return 'Redis does not answer: the other processes cannot be reached.';
  return keepsRecords ? undefined : 'Records cannot be written: a restart would end all tables.';
}

function hasKey(request: Request, key: string | undefined): boolean {
  const [, given = ''] = /^Bearer (\S+)$/.exec(request.get('Authorization') ?? '') ?? [];
  if (key === undefined || given.length !== key.length) return false;
  return timingSafeEqual(Buffer.from(given), Buffer.from(key));
}

/** In the open exposition format. `lateSeconds`: what 99 of 100 turns of the process were late by at the most, since the last look. */
function metricsText(state: ServerState, lateSeconds: number): string {
  const { user, system } = process.cpuUsage();
  const metrics: readonly (readonly [name: string, type: 'gauge' | 'counter', help: string, value: number])[] = [
    ['kilter_tables', 'gauge', 'Tables with somebody at them.', state.tables],
    ['kilter_lines', 'gauge', 'Lines to tables.', state.lines],
    ['kilter_dropped_ticks_total', 'counter', 'Ticks lost because the machine was too slow.', state.droppedTicks],
    [
      'kilter_keeps_records',
      'gauge',
      '1: records are written, or none are wanted. 0: they cannot be.',
      Number(state.keepsRecords),
    ],
    ['kilter_draining', 'gauge', '1: the server is about to end.', Number(state.isDraining)],
    [
      'kilter_lateness_p99_seconds',
      'gauge',
      'Lateness of the process, 99th percentile since the last look.',
      lateSeconds,
    ],
    ['process_resident_memory_bytes', 'gauge', 'Memory of the process.', process.memoryUsage.rss()],
    ['process_cpu_seconds_total', 'counter', 'Time of the processor.', (user + system) / 1e6],
  ];
  return metrics
    .map(([name, type, help, value]) => `# HELP ${name} ${help}\n# TYPE ${name} ${type}\n${name} ${value}\n`)
    .join('');
}
