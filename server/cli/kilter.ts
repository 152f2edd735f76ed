#!/usr/bin/env node
import { enableCompileCache } from 'node:module';
import path from 'node:path';

// start-up is mostly reading source: keep what was compiled beside the other build products (measured 0.17 s -> 0.07 s)
enableCompileCache(path.join(import.meta.dirname, '../../.build/compiled'));

// `kilter worlds | head -1` closes the pipe early: that is not a fault
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

const { runCommandLine } = await import('./program.ts');
process.exitCode = await runCommandLine(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
});
