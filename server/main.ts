import { formatProblem } from '../engine/result.ts';
import { playedModel, type PlanChoice, type TablePlan } from '../engine/table/index.ts';
import { firstLanding, layPlan } from '../levels/index.ts';
import { parseConfig, type ServerConfig } from './config.ts';
import { CLIENT_MISSING, isClientBuilt } from './http/index.ts';
import { openServer } from './rooms/index.ts';

/** Ground of the first landing: the same for everyone, alone or in a crew, so that what was learned on it holds. */
const FIRST_SEED = 1;

const config = parseConfig(process.env);
if (config.ok) {
  await serve(config.value);
} else {
  for (const problem of config.error) warn(problem);
  process.exitCode = 2;
}

async function serve(options: ServerConfig): Promise<void> {
  if (!isClientBuilt(options.clientFolder)) warn(CLIENT_MISSING);
  // what no room caught must not end the other tables
  process.on('uncaughtException', (error) => warn(`Fault: ${error.stack ?? error.message}`));
  process.on('unhandledRejection', (reason) => warn(`Fault: ${String(reason)}`));
  try {
    const server = await openServer(options, {
      model: playedModel,
      plan: planFor,
      report: warn,
    });
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void close(server));
    process.stdout.write(`Kilter's table is set at http://${shownHost(options.host)}:${server.port}\n`);
  } catch (error) {
    warn(reasonFor(error, options));
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

async function close(server: { close(): Promise<void> }): Promise<void> {
  await server.close();
  process.exit(0);
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

function warn(line: string): void {
  process.stderr.write(`${line}\n`);
}
