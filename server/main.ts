import { formatProblem } from '../engine/result.ts';
import { playedModel, type PlanChoice, type TablePlan } from '../engine/table/index.ts';
import { firstLanding, layPlan } from '../levels/index.ts';
import { parseConfig, type ServerConfig } from './config.ts';
import { CLIENT_MISSING, isClientBuilt } from './http/index.ts';
import { openLog, takeConsole } from './log.ts';
import { openServer, type RunningServer } from './rooms/index.ts';
import { settingsText } from './settings.ts';

/** Ground of the first landing: the same for everyone, alone or in a crew, so that what was learned on it holds. */
const FIRST_SEED = 1;

/** From a signal to the end of the process, whatever happens [ms]. */
const LATEST_END_MS = 4500;

const config = parseConfig(process.env);
if (process.argv.includes('--help')) {
  process.stdout.write(settingsText());
} else if (config.ok) {
  await serve(config.value);
} else {
  for (const problem of config.error) complain(problem);
  process.exitCode = 2;
}

async function serve(options: ServerConfig): Promise<void> {
  const log = openLog(options.log ?? (process.stderr.isTTY ? 'plain' : 'json'));
  const { report } = log;
  takeConsole(report);
  if (!isClientBuilt(options.clientFolder)) report('start', CLIENT_MISSING);
  let server: RunningServer | undefined;
  let isEnding = false;
  const end = async (code: number) => {
    if (isEnding) return;
    isEnding = true;
    // whatever does not end by itself is not waited for
    setTimeout(() => process.exit(code), LATEST_END_MS);
    await server?.close().catch((error: unknown) => report('fault', String(error)));
    log.end();
    process.exit(code);
  };
  // what nobody foresaw has left something half done: the tables come back from their journal
  const fault = (error: unknown) => {
    report('fault', `Fault, and the server ends: ${error instanceof Error ? error.stack : String(error)}`);
    void end(1);
  };
  process.on('uncaughtException', fault).on('unhandledRejection', fault);
  try {
    server = await openServer(options, { model: playedModel, plan: planFor, report });
    for (const signal of ['SIGINT', 'SIGTERM'] as const)
      process.once(signal, () => {
        report('stop', 'The server ends: its tables are written down.');
        void end(0);
      });
    process.stdout.on('error', () => undefined);
    process.stdout.write(`Kilter's table is set at http://${shownHost(options.host)}:${server.port}\n`);
  } catch (error) {
    complain(reasonFor(error, options));
    process.exit(1);
  }
}

/** A choice was laid out once when it came in, so that whoever sent it was told what is wrong. `recorded`: the drill that a record carries. */
function planFor(choice?: PlanChoice, recorded?: unknown): TablePlan {
  if (choice === undefined) return firstLanding(FIRST_SEED);
  const plan = layPlan(choice, recorded);
  if (!plan.ok) throw new Error(plan.error.map(formatProblem).join('; '));
  return plan.value;
}

function reasonFor(error: unknown, { port, host }: ServerConfig): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  const where = `port ${port}${host === undefined ? '' : ` of ${host}`}`;
  switch (code) {
    case 'EADDRINUSE':
      return `Another program uses ${where}. Stop it, or choose another: PORT=${port + 1} npm start`;
    case 'EACCES':
      return `This user may not open ${where}. Choose one above 1023: PORT=2567 npm start`;
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return `HOST: expected an address of this machine, got "${host}"`;
    default:
      return `The server did not start: ${error instanceof Error ? error.message : String(error)}`;
  }
}

/** As it is typed into a browser on this machine. */
function shownHost(host: string | undefined): string {
  if (host === undefined || host === '0.0.0.0' || host === '::') return 'localhost';
  return host.includes(':') ? `[${host}]` : host;
}

/** To whoever starts it. */
function complain(line: string): void {
  process.stderr.write(`${line}\n`);
}
