import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ensurePackage } from './debianPackage.ts';

/** Real Redis for the tests of several processes: the one named by REDIS_PATH, or where Debian and others put it. */
function findRedis(): string | undefined {
  const candidates = [
    process.env.REDIS_PATH,
    '/usr/bin/redis-server',
    '/usr/bin/valkey-server',
    '/usr/local/bin/redis-server',
    '/opt/homebrew/bin/redis-server',
  ];
  return candidates.find((one) => one !== undefined && existsSync(one));
}

/** Returns what to do where there is none and none can be fetched. */
export function ensureRedis(): ReturnType<typeof ensurePackage> {
  return ensurePackage({
    find: findRedis,
    package: 'redis-server',
    fetching: "No Redis here: fetching Debian's package for the tests of several processes (once) ...",
    advice:
      'The tests of several processes need Redis: run `sudo apt-get install redis-server`, or set REDIS_PATH to a redis-server, then run this again.',
  });
}

/** A Redis of its own for a test, which keeps nothing. */
export async function startRedis(): Promise<{ readonly address: string; stop(): Promise<void> }> {
  const program = findRedis();
  if (program === undefined) throw new Error('No Redis found; `npm test` fetches one or says how.');
  const folder = mkdtempSync(path.join(tmpdir(), 'kilter-redis-'));
  const port = await freePort();
  const settings = ['--port', String(port), '--bind', '127.0.0.1', '--save', '', '--appendonly', 'no', '--dir', folder];
  const child = spawn(program, settings, { stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  while (!said.includes('Ready to accept connections')) {
    const [chunk] = (await once(child.stdout, 'data')) as [Buffer];
    said += chunk.toString();
  }
  child.stdout.resume();
  return {
    address: `redis://127.0.0.1:${port}`,
    async stop() {
      const ended = once(child, 'exit');
      child.kill('SIGKILL');
      await ended;
      rmSync(folder, { recursive: true });
    },
  };
}

/** A port that nobody uses at the moment. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  return typeof address === 'object' && address !== null ? address.port : 0;
}
