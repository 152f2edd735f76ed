/**
 * Computes tables of limits in levels/limits; some minutes for each:
 *
 *   node tests/validation/table/writeLimits.ts [lander ...] [world ...] [site with soft ground]
 *
 * Without a world, those on the Moon; without a site, those on rigid ground. A table that is new is to be listed in levels/limits/findLimits.ts. To be
 * run after every change of the touchdown simulation, of a lander or of that soil; `limitTables.test.ts` notices when it was not.
 */
import { writeFileSync } from 'node:fs';
import { entriesOf, limitMaker } from '../../../engine/table/index.ts';
import type { Lander } from '../../../engine/lander/index.ts';
import { findWorld, WORLDS, type World } from '../../../engine/worlds.ts';
import { findSite } from '../../../levels/index.ts';
import { findLander, LANDERS } from '../../../levels/landers.ts';
import { limitAxes } from '../../../levels/limits/limitAxes.ts';

const words = process.argv.slice(2);
const sites = words.flatMap((word) => findSite(word) ?? []);
const known = (word: string) => findLander(word) ?? findWorld(word) ?? findSite(word);
const unknown = words.filter((word) => known(word) === undefined);
if (unknown.length > 0) throw new Error(`No lander, world or site is named ${unknown.join(', ')}.`);
if (sites.length > 1 || sites.some(({ ground }) => ground.soil === undefined))
  throw new Error('One site with soil, at most.');
const [site] = sites;
const landers = LANDERS.filter(({ id }) => words.includes(id));
const worlds = WORLDS.filter(({ id }) => words.includes(id));

for (const lander of landers.length === 0 ? LANDERS : landers)
  for (const world of worlds.length === 0 ? WORLDS.filter(({ id }) => id === 'moon') : worlds) write(lander, world);

function write(lander: Lander, world: World): void {
  const axes = limitAxes(lander);
  const soil = site?.ground.soil;
  const limitOf = limitMaker({ lander, gravity: world.gravity, ...(soil && { soil }), ...axes });
  // down to a whole millimeter a second, below the tolerance of the limit
  const limits = entriesOf(axes).map((entry) => Math.floor(limitOf(entry) * 1000) / 1000);
  const names = { lander: lander.id, world: world.id, ...(site && { site: site.id }) };
  const head = Object.entries(names).map(([name, id]) => `  "${name}": "${id}",\n`);
  writeFileSync(
    new URL(
      `../../../levels/limits/${lander.id}${world.name}${site === undefined ? '' : 'Dust'}.json`,
      import.meta.url,
    ),
    `{\n${head.join('')}  "limits": [${limits.join(', ')}]\n}\n`,
  );
  process.stdout.write(`${lander.id}, ${world.name}, ${site?.name ?? 'rigid'}: ${limits.length} limits\n`);
}
