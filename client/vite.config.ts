import path from 'node:path';
import { defineConfig } from 'vite';
import { offline, WORKER_FILE } from './build/offline.ts';
import { phaserParts } from './build/phaserParts.ts';
import { startDrawing } from './build/startDrawing.ts';

const packageFolder = path.resolve(import.meta.dirname, '..');
const outDir = path.join(packageFolder, '.build/client');

export default defineConfig({
  root: import.meta.dirname,
  // the page works under any path
  base: './',
  build: {
    outDir,
    emptyOutDir: true,
    target: 'es2022',
    // nothing is fetched that the page did not ask for
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    chunkSizeWarningLimit: 600,
    rolldownOptions: {
      input: {
        index: path.join(import.meta.dirname, 'index.html'),
        offline: path.join(import.meta.dirname, 'offline/worker.ts'),
      },
      output: {
        entryFileNames: ({ name }) => (name === 'offline' ? WORKER_FILE : 'assets/[name]-[hash].js'),
        // Phaser changes seldom; engine and planck stay together, as their order of loading matters
        codeSplitting: { groups: [{ name: 'phaser', test: /phaser-parts|node_modules\/phaser/ }] },
      },
    },
  },
  plugins: [phaserParts(packageFolder), startDrawing(import.meta.dirname), offline(import.meta.dirname)],
  server: { port: 5173, strictPort: false },
});
