import { spawn, type ChildProcessByStdio } from 'node:child_process';
import type { Readable } from 'node:stream';
import { ROOT } from './sources.ts';
import { until } from './tableServer.ts';

/** The server as a user starts it, in a process of its own. */
interface ServerProcess {
  readonly child: ChildProcessByStdio<null, Readable, Readable>;
  readonly lines: { readonly out: string[]; readonly err: string[] };
  /** Its status, or the signal that ended it. */
  readonly ended: Promise<number | string>;
}

const running: ServerProcess[] = [];

/** All that it has of what surrounds the tests. */
const { PATH = '', NODE_COMPILE_CACHE = '' } = process.env;

/** `before`: options for the runtime. `folder`: where the server lies. */
export function startProcess(
  environment: Readonly<Record<string, string>>,
  before: readonly string[] = [],
  folder = ROOT,
): ServerProcess {
  const child = spawn(process.execPath, [...before, 'server/main.ts'], {
    cwd: folder,
    env: { PATH, NODE_COMPILE_CACHE, KILTER_RECORDS: 'none', PORT: '0', HOST: '127.0.0.1', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const lines = { out: [] as string[], err: [] as string[] };
  child.stdout.on('data', gather(lines.out));
  child.stderr.on('data', gather(lines.err));
  const ended = new Promise<number | string>((resolve) => {
    child.on('exit', (code, signal) => resolve(code ?? signal ?? ''));
  });
  const run = { child, lines, ended };
  running.push(run);
  return run;
}

function gather(into: string[]): (chunk: Buffer) => void {
  return (chunk) => void into.push(...chunk.toString().split('\n').filter(Boolean));
}

/** Where it says that it is. */
export async function addressOf({ lines }: ServerProcess): Promise<string> {
  await until('the address', () => lines.out.length > 0, 60_000);
  return /http:\/\/\S+/.exec(lines.out[0] ?? '')?.[0] ?? '';
}

export function endProcesses(): void {
  for (const { child } of running.splice(0)) child.kill('SIGKILL');
}
