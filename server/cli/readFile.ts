import { readFileSync, statSync } from 'node:fs';
import type { DocumentBudget } from '../../engine/documentText.ts';
import { oneLine, UsageError } from './usageError.ts';

/** The text of a file on the command line, or undefined where no such file exists. A longer one than its kind may be is not even opened. */
export function readFile(file: string, kind: string, { mostBytes }: DocumentBudget): string | undefined {
  const shown = `'${oneLine(file, 80)}'`;
  const status = statSync(file, { throwIfNoEntry: false });
  if (status === undefined) return undefined;
  if (!status.isFile()) throw new UsageError(`${shown} is not a file`);
  if (status.size > mostBytes)
    throw new UsageError(`${shown}: expected at most ${mostBytes} bytes for ${kind}, got ${status.size}`);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file));
  } catch (error) {
    if (error instanceof TypeError) throw new UsageError(`${shown} is not UTF-8 text`);
    throw new UsageError(`${shown} cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}
