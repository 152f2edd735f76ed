import { availableParallelism } from 'node:os';
import path from 'node:path';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './support/longestFirst.ts';

// each test that has a process of its own, and each that it starts, loads engine and server anew: what was compiled is kept (half a second of processor time a file)
process.env['NODE_COMPILE_CACHE'] ??= path.join(import.meta.dirname, '../.build/compiled');

/**
 * Loaded by Node itself. The test runner's own loading turns each use of an imported name into the reading of a property, which makes the hot loops
 * of the engine six to ten times slower.
 */
const NATIVE = /\/(engine|levels)\/.*\.ts$/;

const LIVE = {
  root: '.',
  testTimeout: 120_000,
  hookTimeout: 120_000,
  // a poll ends as soon as it is true; a busy machine may need more than the runner's one second
  expect: { poll: { timeout: 15_000 } },
  server: { deps: { external: [NATIVE] } },
};

/**
 * Files that need a process of their own: those that hold our arithmetic to that of the platform, which the played world puts away for its whole
 * process; those that ask what is loaded, and when; and those that put other modules in place of ours.
 */
const APART = [
  'tests/{unit,validation,convergence,determinism}/math/**/*.test.ts',
  'tests/unit/world/loadOrder.test.ts',
  'tests/unit/client/settings.test.ts',
  'tests/contract/cli/checkFails.test.ts',
];

const PURE = {
  root: '.',
  server: { deps: { external: [NATIVE] } },
  // some simulate for seconds, and a busy machine is five times slower
  testTimeout: 90_000,
  // the runner would leave one core idle, half of a machine of two; and some of these wait, for processes that they start
  maxWorkers: availableParallelism() + 1,
};

/** What runs in Node alone, fast, in shared processes and apart; what needs real sockets; and what needs a built client in a real browser. */
export default defineConfig({
  test: {
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        test: {
          name: 'pure',
          ...PURE,
          include: [
            'tests/{unit,validation,properties,convergence,conservation,determinism,replay,contract,boundary,regression}/**/*.test.ts',
          ],
          exclude: APART,
          // loading the engine anew for each of 250 files took longer than testing it; what it loads holds no state
          isolate: false,
        },
      },
      { test: { name: 'apart', ...PURE, include: APART } },
      {
        test: {
          name: 'sync',
          ...LIVE,
          include: ['tests/sync/**/*.test.ts'],
          // as above
          isolate: false,
          // what is lost, late or too much is told by the clock: two at once, which mostly wait, but not beside other tests
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        test: {
          name: 'e2e',
          ...LIVE,
          include: ['tests/e2e/**/*.test.ts'],
          // as above
          isolate: false,
          // flights take their real time and wait for most of it: three at once, but not beside other tests
          maxWorkers: 3,
          sequence: { groupOrder: 2 },
          // a flight in a browser goes by the clock of the machine; run.ts names whatever needed a second try
          retry: 1,
        },
      },
    ],
  },
});
