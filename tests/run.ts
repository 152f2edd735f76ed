import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { ensureBrowser } from './support/browser.ts';

/**
 * Proves the project: types, lint, format, the client's build, then every test. Prints one line a step and ends with
 * `N passed, N failed`, where each step outside the test runner counts as one.
 */
const root = path.dirname(import.meta.dirname);
const report = path.join(root, '.build/tests.json');
let passed = 0;
let failed = 0;

function step(name: string, command: string, args: readonly string[]): boolean {
  const begun = Date.now();
  const done = spawnSync(command, args, { cwd: root, encoding: 'utf8', shell: process.platform === 'win32' });
  const ok = done.status === 0;
  if (ok) passed++;
  else failed++;
  console.log(`${ok ? 'pass' : 'FAIL'}  ${name} (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
  if (!ok) console.log(done.stdout, done.stderr, done.error?.message ?? '');
  return ok;
}

function runTests(): void {
  mkdirSync(path.dirname(report), { recursive: true });
  rmSync(report, { force: true });
  const args = [
    'run',
    '--config',
    'tests/vitest.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile=${report}`,
  ];
  const done = spawnSync('vitest', args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' });
  const counts = readCounts();
  passed += counts.passed;
  failed += counts.failed;
  // an unhandled error or a suite that could not load fails the run without failing a test
  if (done.status !== 0 && counts.failed === 0) failed++;
}

function readCounts(): { passed: number; failed: number } {
  try {
    const json = JSON.parse(readFileSync(report, 'utf8')) as { numPassedTests: number; numFailedTests: number };
    return { passed: json.numPassedTests, failed: json.numFailedTests };
  } catch {
    return { passed: 0, failed: 1 };
  }
}

const browser = ensureBrowser();
if ('advice' in browser) {
  console.error(browser.advice);
  process.exit(2);
}

step('engine types, without DOM or Node', 'tsc', ['-p', 'engine']);
step('levels types, without DOM or Node', 'tsc', ['-p', 'levels']);
step('all types', 'tsc', ['-p', '.']);
step('lint', 'oxlint', ['--type-aware', '--deny-warnings']);
step('format', 'oxfmt', ['--check']);
if (step('client build', 'node', ['.setup/buildClient.mjs'])) runTests();
else failed++;

console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
