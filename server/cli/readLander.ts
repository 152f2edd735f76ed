import { readFileSync, statSync } from 'node:fs';
import { formatProblem, parseLanderText, type Lander } from '../../engine/index.ts';
import { findLander, LANDERS } from '../../levels/index.ts';
import { oneLine, UsageError } from './usageError.ts';

/** A file longer than this is not even opened [bytes]. What a lander may really take is less: the parser knows. */
const LONGEST_FILE = 1024 * 1024;

/** The lander that a word on the command line means: one of the built-in ones by name, or else a file. */
export function readLander(nameOrPath: string): Lander {
  const builtIn = findLander(nameOrPath.trim().toLowerCase());
  if (builtIn !== undefined) return builtIn;
  const parsed = parseLanderText(readText(nameOrPath));
  if (parsed.ok) return parsed.value;
  const [first, ...others] = parsed.error;
  const more = others.length === 0 ? '' : ` (and ${others.length} more)`;
  throw new UsageError(`${oneLine(nameOrPath, 80)}: ${first === undefined ? 'refused' : formatProblem(first)}${more}`);
}

function readText(file: string): string {
  const shown = `'${oneLine(file, 80)}'`;
  const status = statSync(file, { throwIfNoEntry: false });
  if (status === undefined) {
    const names = LANDERS.map((lander) => lander.id).join(', ');
    throw new UsageError(`no lander ${shown}: neither built in (${names}) nor a file that exists`);
  }
  if (!status.isFile()) throw new UsageError(`${shown} is not a file`);
  if (status.size > LONGEST_FILE)
    throw new UsageError(`${shown} is ${status.size} bytes long; expected at most ${LONGEST_FILE}`);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file));
  } catch (error) {
    if (error instanceof TypeError) throw new UsageError(`${shown} is not UTF-8 text`);
    throw new UsageError(`${shown} cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}
