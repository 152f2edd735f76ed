import { availableParallelism } from 'node:os';
import { Presets, SingleBar } from 'cli-progress';
import type { Command } from 'commander';
import type { LongWork } from '../workers/pool.ts';
import { quantityParser, type Quantity } from './quantity.ts';

const WORKERS: Quantity = { unit: 'threads', least: 1, most: 256, whole: true };

export interface LongOptions {
  readonly workers?: number;
}

export function addLongOptions(command: Command): Command {
  return command
    .optionsGroup('Threads:')
    .option(
      '--workers <number>',
      'worker threads; the result does not depend on it (default: one for each core)',
      quantityParser(WORKERS),
    );
}

/**
 * Runs long work with a progress bar on the terminal, if there is one. Ctrl-C ends it cleanly, with what was done so far; a
 * second one ends the program.
 */
export async function withProgress<Result>(
  options: LongOptions,
  unit: string,
  run: (work: LongWork) => Promise<Result>,
): Promise<Result> {
  const controller = new AbortController();
  const stop = (): void => {
    controller.abort();
  };
  process.once('SIGINT', stop);
  const bar = new SingleBar(
    {
      format: `{bar} {percentage} %  {value} of {total} ${unit}  {duration_formatted}`,
      stream: process.stderr,
      clearOnComplete: true,
      noTTYOutput: false,
    },
    Presets.legacy,
  );
  bar.start(1, 0);
  try {
    return await run({
      workers: options.workers ?? availableParallelism(),
      signal: controller.signal,
      onProgress: ({ done, known }) => {
        bar.setTotal(known);
        bar.update(done);
      },
    });
  } finally {
    bar.stop();
    process.removeListener('SIGINT', stop);
  }
}
