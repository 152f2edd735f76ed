// What `npm start`, `npm test` and `npm run bench` call: install what is missing, then hand over to the package's own runtime.
import { spawn } from 'node:child_process';
import { ensureInstalled, ownRuntime, root } from './install.mjs';

const tasks = {
  start: [['.setup/buildClient.mjs'], ['server/main.ts']],
  test: [['tests/run.ts']],
  bench: [['.setup/buildClient.mjs'], ['tests/bench/run.ts']],
};

const [name, ...rest] = process.argv.slice(2);
const steps = tasks[name];
if (!steps) {
  console.error(`Expected one of ${Object.keys(tasks).join(', ')}, got ${name ?? 'nothing'}`);
  process.exit(2);
}

const parent = process.ppid;
ensureInstalled();
for (const [index, step] of steps.entries()) {
  const last = index === steps.length - 1;
  const code = await runNode(last ? [...step, ...rest] : step);
  if (code !== 0) process.exit(code);
  if (process.ppid !== parent) process.exit(0);
}

/**
 * One step on the package's own Node; passes an interrupt on, so that a server can close its tables. npm passes a signal to the shell between it and this
 * script, which ends without a word: that the parent is gone is the signal.
 */
function runNode(args) {
  const child = spawn('node', args, {
    cwd: root,
    env: ownRuntime,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  const pass = (signal) => child.kill(signal);
  process.on('SIGINT', pass).on('SIGTERM', pass);
  const watch = setInterval(() => {
    if (process.ppid !== parent) pass('SIGTERM');
  }, 500);
  return new Promise((resolve) => {
    child.on('exit', (code, signal) => {
      process.off('SIGINT', pass).off('SIGTERM', pass);
      clearInterval(watch);
      resolve(signal === 'SIGINT' || signal === 'SIGTERM' ? 0 : (code ?? 1));
    });
  });
}
