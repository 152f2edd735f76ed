import { readFileSync } from 'node:fs';
import type { ShownHashes } from './views.ts';

/**
 * THE HASHES ARE OUR OWN OUTPUT. They check nothing but that nothing changed unnoticed: where something changes on purpose they are written anew
 * (`node tests/regression/golden/write.ts`), in a commit that says why.
 */
interface Golden {
  /** By run and seat: whose display it is. */
  readonly views: Readonly<Record<string, ShownHashes>>;
  readonly touchdowns: Readonly<Record<string, string>>;
  readonly studies: Readonly<Record<string, string>>;
}

export function readGolden(): Golden {
  return JSON.parse(readFileSync(new URL('golden.json', import.meta.url), 'utf8')) as Golden;
}
