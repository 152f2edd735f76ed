/**
 * Computes tables of limits in levels/limits; some minutes a lander and world:
 *
 *   node tests/validation/table/writeLimits.ts [lander ...] [world ...]
 *
 * Without a world, those on the Moon. A table that is new is to be listed in levels/limits/findLimits.ts. To be run after
 * every change of the touchdown simulation or of a lander; `limitTables.test.ts` notices when it was not.
 */
import { writeFileSync } from 'node:fs';
import { entriesOf, limitMaker } from '../../../engine/table/index.ts';
import type { Lander } from '../../../engine/lander/index.ts';
import { findWorld, WORLDS, type World } from '../../../engine/worlds.ts';
import { findLander, LANDERS } from '../../../levels/landers.ts';
import { limitAxes } from '../../../levels/limits/limitAxes.ts';

const words = process.argv.slice(2);
const unknown = words.filter((word) => findLander(word) === undefined && findWorld(word) === undefined);
if (unknown.length > 0) throw new Error(`No lander and no world is named ${unknown.join(', ')}.`);
const landers = LANDERS.filter(({ id }) => words.includes(id));
const worlds = WORLDS.filter(({ id }) => words.includes(id));

for (const lander of landers.length === 0 ? LANDERS : landers)
  for (const world of worlds.length === 0 ? WORLDS.filter(({ id }) => id === 'moon') : worlds) write(lander, world);

function write(lander: Lander, world: World): void {
  const axes = limitAxes(lander);
  const limitOf = limitMaker({ lander, gravity: world.gravity, ...axes });
  // down to a whole millimeter a second, below the tolerance of the limit
  const limits = entriesOf(axes).map((entry) => Math.floor(limitOf(entry) * 1000) / 1000);
  const head = `{\n  "lander": "${lander.id}",\n  "world": "${world.id}",\n  "limits": `;
  writeFileSync(
    new URL(`../../../levels/limits/${lander.id}${world.name}.json`, import.meta.url),
    `${head}[${limits.join(', ')}]\n}\n`,
  );
  process.stdout.write(`${lander.id}, ${world.name}: ${limits.length} limits\n`);
}
