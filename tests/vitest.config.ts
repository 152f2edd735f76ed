import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

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

/** Three projects: what runs in Node alone, fast; what needs real sockets; and what needs a built client in a real browser. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'pure',
          server: { deps: { external: [NATIVE] } },
          root: '.',
          include: [
            'tests/{unit,validation,properties,convergence,conservation,determinism,replay,contract,boundary,regression}/**/*.test.ts',
          ],
          testTimeout: 30_000,
          // the runner would leave one core idle, half of a machine of two
          maxWorkers: availableParallelism(),
        },
      },
      {
        test: {
          name: 'sync',
          ...LIVE,
          include: ['tests/sync/**/*.test.ts'],
          // what is lost, late or too much is told by the clock: nothing beside it
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
        },
      },
      {
        test: {
          name: 'e2e',
          ...LIVE,
          include: ['tests/e2e/**/*.test.ts'],
          // flights take their real time and wait for most of it: two at once, but not beside other tests
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
