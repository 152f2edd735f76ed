import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Plugin } from 'vite';
import type { Built } from '../offline/answers.ts';

/** The worker's file: by this very name, since browsers ask for it anew to find a new build. */
export const WORKER_FILE = 'offline.js';
const PLACE = 'KILTER_BUILT';

/** Tells the worker that keeps the page which files there are, and a version that changes with any of them. */
export function offline(clientFolder: string): Plugin {
  return {
    name: 'kilter:offline',
    apply: 'build',
    // after the page itself was written
    enforce: 'post',
    generateBundle(_, bundle) {
      const worker = bundle[WORKER_FILE];
      if (worker?.type !== 'chunk') throw new Error(`The build has no ${WORKER_FILE}`);
      const folder = path.join(clientFolder, 'public');
      const shown = readdirSync(folder).toSorted();
      const hash = createHash('sha256');
      for (const file of shown) hash.update(readFileSync(path.join(folder, file)));
      const outputs = Object.values(bundle).toSorted((a, b) => (a.fileName < b.fileName ? -1 : 1));
      for (const output of outputs) hash.update(output.type === 'chunk' ? output.code : output.source);
      const parts = outputs
        .map(({ fileName }) => fileName)
        .filter((file) => !['index.html', WORKER_FILE].includes(file));
      const built: Built = { version: hash.digest('hex').slice(0, 12), files: ['./', ...parts, ...shown] };
      worker.code = worker.code.replace(PLACE, JSON.stringify(built));
    },
  };
}
