import { defineConfig } from 'vitest/config';

/**
 * Loaded by Node itself. The test runner's own loading turns each use of an imported name into the reading of a property, which makes the hot loops
 * of the engine six to ten times slower.
 */
const NATIVE = /\/(engine|levels)\/.*\.ts$/;

/** Two projects: what runs in Node alone, fast; and what needs a built client, real sockets or a real browser. */
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
        },
      },
      {
        test: {
          name: 'live',
          root: '.',
          include: ['tests/{sync,e2e}/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
          server: { deps: { external: [NATIVE] } },
        },
      },
    ],
  },
});
