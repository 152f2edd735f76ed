/**
 * Computes the tables of limits in levels/limits again; some minutes a lander:
 *
 *   node tests/validation/table/writeLimits.ts [lander ...]
 *
 * To be run after every change of the touchdown simulation or of a lander; `limitTables.test.ts` notices when it was not.
 */
import { writeFileSync } from 'node:fs';
import { entriesOf, limitMaker } from '../../../engine/table/index.ts';
import { findWorld } from '../../../engine/worlds.ts';
import { LANDERS } from '../../../levels/landers.ts';
import { limitAxes } from '../../../levels/limits/limitAxes.ts';

const WORLD = 'moon';
const wanted = process.argv.slice(2);

for (const lander of LANDERS) {
  if (wanted.length > 0 && !wanted.includes(lander.id)) continue;
  const { gravity } = findWorld(WORLD)!;
  const axes = limitAxes(lander);
  const limitOf = limitMaker({ lander, gravity, ...axes });
  // down to a whole millimeter a second, below the tolerance of the limit
  const limits = entriesOf(axes).map((entry) => Math.floor(limitOf(entry) * 1000) / 1000);
  const head = `{\n  "lander": "${lander.id}",\n  "world": "${WORLD}",\n  "limits": `;
  writeFileSync(
    new URL(`../../../levels/limits/${lander.id}.json`, import.meta.url),
    `${head}[${limits.join(', ')}]\n}\n`,
  );
  process.stdout.write(`${lander.id}: ${limits.length} limits\n`);
}
