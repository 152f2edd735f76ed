import { writeFileSync } from 'node:fs';
import { oneLine, UsageError } from './usageError.ts';

/** Writes a file that was named on the command line, or says why that cannot be. */
export function writeFile(file: string, text: string): void {
  try {
    writeFileSync(file, text);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new UsageError(`'${oneLine(file, 80)}' cannot be written: ${reason}`);
  }
}
