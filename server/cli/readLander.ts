import { nearestName } from '../../engine/nearestName.ts';
import { LANDER_BUDGET, parseLanderText, type Lander } from '../../engine/lander/index.ts';
import { findLander, LANDERS } from '../../levels/index.ts';
import { accepted } from './problems.ts';
import { readFile } from './readFile.ts';
import { oneLine, UsageError } from './usageError.ts';

/** The lander that a word on the command line means: one of the built-in ones by name, or else a file. */
export function readLander(nameOrPath: string): Lander {
  const builtIn = findLander(nameOrPath.trim().toLowerCase());
  if (builtIn !== undefined) return builtIn;
  const text = readFile(nameOrPath, 'a lander file', LANDER_BUDGET);
  if (text === undefined) throw noSuchLander(nameOrPath);
  return accepted(nameOrPath, parseLanderText(text));
}

export function noSuchLander(nameOrPath: string): UsageError {
  const names = LANDERS.map((lander) => lander.id).join(', ');
  const near = nearestName(
    nameOrPath.trim(),
    LANDERS.map((lander) => lander.id),
  );
  const hint = near === undefined ? '' : `; did you mean ${near}?`;
  return new UsageError(
    `no lander '${oneLine(nameOrPath, 80)}': neither built in (${names}) nor a file that exists${hint}`,
  );
}
