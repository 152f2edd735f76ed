// Builds the client into .build/client when a file that goes into it is newer than the last build.
import { existsSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, run } from './install.mjs';

const stamp = join(root, '.build/client.stamp');
const sources = ['client', 'engine', 'levels', 'server/schema', 'server/messages', 'package-lock.json'];

/** Latest change below a file or folder [ms]. */
function newest(path) {
  if (!existsSync(path)) return 0;
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), stat.mtimeMs);
}

function ensureClientBuilt() {
  const changed = Math.max(...sources.map((source) => newest(join(root, source))));
  if (existsSync(stamp) && statSync(stamp).mtimeMs >= changed) return;
  const begun = new Date();
  rmSync(stamp, { force: true });
  run('vite', ['build', '--config', 'client/vite.config.ts', '--logLevel', 'warn']);
  writeFileSync(stamp, '');
  utimesSync(stamp, begun, begun);
}

if (process.argv[1] === import.meta.filename) ensureClientBuilt();
