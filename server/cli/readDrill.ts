import type { Drill } from '../../engine/drill/index.ts';
import { DRILL_BUDGET, DRILLS, findDrill, parseDrillText } from '../../levels/index.ts';
import { accepted } from './problems.ts';
import { readFile } from './readFile.ts';
import { oneLine, UsageError } from './usageError.ts';

/** The drill that a word on the command line names: one of ours, or a file. */
export function readDrill(named: string): Drill {
  const own = findDrill(named);
  if (own !== undefined) return own;
  const text = readFile(named, 'a drill', DRILL_BUDGET);
  if (text === undefined) {
    const names = DRILLS.map(({ id }) => id).join(', ');
    throw new UsageError(`no drill and no file '${oneLine(named, 80)}'; the drills are ${names}`);
  }
  return accepted(named, parseDrillText(text));
}
