// Brings the package's own runtime and libraries, once per lock file. Plain JavaScript: it must run on whatever Node came with npm.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
const marker = join(root, 'node_modules/.installed');

/** Environment in which `node` is the package's own. */
export const ownRuntime = {
  ...process.env,
  PATH: join(root, 'node_modules/.bin') + delimiter + (process.env.PATH ?? ''),
};

export function ensureInstalled() {
  const wanted = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  if (existsSync(marker) && readFileSync(marker, 'utf8') === wanted) return;
  console.log('Installing what Kilter needs (once, under a minute) ...');
  run('npm', ['ci', '--loglevel=error', '--no-fund', '--no-audit']);
  writeFileSync(marker, wanted);
}

/** Runs a command in the package's folder on its own runtime; ends this process with the command's code if it fails. */
export function run(command, args) {
  const done = spawnSync(command, args, {
    cwd: root,
    env: ownRuntime,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (done.error) {
    console.error(`Could not run ${command}: ${done.error.message}`);
    process.exit(1);
  }
  if (done.status !== 0) process.exit(done.status ?? 1);
}
