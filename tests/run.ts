import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { ensureBrowser } from './support/browser.ts';
import { ensureRedis } from './support/redis.ts';

/**
 * Proves the project: types, lint, format, the client's build, then every test. Prints one line a step and ends with
 * `N passed, N failed`, where each step outside the test runner counts as one.
 */
const root = path.dirname(import.meta.dirname);
const report = path.join(root, '.build/tests.json');
let passed = 0;
let failed = 0;

async function step(name: string, command: string, args: readonly string[]): Promise<boolean> {
  const begun = Date.now();
  const child = spawn(command, args, { cwd: root, shell: process.platform === 'win32' });
  const said: Buffer[] = [];
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (part: Buffer) => said.push(part));
  const [code] = (await once(child, 'close').catch((error: unknown) => [String(error)])) as [unknown];
  const ok = code === 0;
  if (ok) passed++;
  else failed++;
  console.log(`${ok ? 'pass' : 'FAIL'}  ${name} (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
  if (!ok) console.log(Buffer.concat(said).toString(), typeof code === 'string' ? code : '');
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

interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly testResults: readonly {
    readonly assertionResults: readonly {
      readonly fullName: string;
      readonly status: string;
      readonly failureMessages: readonly string[];
    }[];
  }[];
}

function readCounts(): { passed: number; failed: number } {
  try {
    const json = JSON.parse(readFileSync(report, 'utf8')) as Report;
    tellSecondTries(json);
    return { passed: json.numPassedTests, failed: json.numFailedTests };
  } catch {
    return { passed: 0, failed: 1 };
  }
}

/** A browser test that passed only when tried again is a finding: it is named, with why it failed first. */
function tellSecondTries({ testResults }: Report): void {
  for (const { fullName, status, failureMessages } of testResults.flatMap(({ assertionResults }) => assertionResults))
    if (status === 'passed' && failureMessages.length > 0)
      console.log(`passed on the second try: ${fullName}\n  ${failureMessages.join('\n').split('\n', 4).join('\n  ')}`);
}

for (const needed of [ensureBrowser(), ensureRedis()]) {
  if (!('advice' in needed)) continue;
  console.error(needed.advice);
  process.exit(2);
}

// side by side: none needs another, and each leaves a core idle for part of its time
const steps = await Promise.all([
  step('client build', 'node', ['.setup/buildClient.mjs']),
  step('engine types, without DOM or Node', 'tsc', ['-p', 'engine']),
  step('levels types, without DOM or Node', 'tsc', ['-p', 'levels']),
  step('all types', 'tsc', ['-p', '.']),
  step('lint', 'oxlint', ['--type-aware', '--deny-warnings']),
  step('format', 'oxfmt', ['--check']),
]);
if (steps[0]) runTests();
else failed++;

console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
