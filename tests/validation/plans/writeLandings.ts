/**
 * Flies every lander over every site from every start with the steady pilot, and prints the tables of levels/plans/README.md; some minutes:
 *
 *   node tests/validation/plans/writeLandings.ts [world ...] [seeds of each]
 */
import { LANDERS, SITES, STARTS, worldsFor } from '../../../levels/index.ts';
import type { PlanChoice } from '../../../engine/table/index.ts';
import { laid } from '../../support/planChoice.ts';
import { flyPlan, steadily } from './flyPlan.ts';

const words = process.argv.slice(2);
const wanted = words.filter((word) => !/^\d+$/.test(word));
/** Of each lander, site and start. */
const SEEDS = Number(words.find((word) => /^\d+$/.test(word)) ?? 40);
const worlds = wanted.length === 0 ? ['moon', 'mars'] : wanted;

for (const world of worlds) {
  process.stdout.write(`\n${world}: upright of ${SEEDS}, from ${STARTS.map(({ id }) => id).join(', ')}\n\n`);
  process.stdout.write(`| lander | ${SITES.map(({ name }) => name).join(' | ')} |\n`);
  process.stdout.write(`| ------ | ${SITES.map(() => '---').join(' | ')} |\n`);
  for (const lander of LANDERS) {
    if (!worldsFor(lander).some(({ id }) => id === world)) continue;
    const cells = SITES.map((site) =>
      STARTS.map((start) => uprightOf({ lander: lander.id, site: site.id, start: start.id, world })).join(', '),
    );
    process.stdout.write(`| ${lander.name} | ${cells.join(' | ')} |\n`);
  }
}

function uprightOf(said: Partial<PlanChoice>): number {
  let upright = 0;
  for (let seed = 1; seed <= SEEDS; seed++) {
    const plan = laid({ ...said, seed });
    if (flyPlan(plan, steadily(plan)).outcome === 'upright') upright++;
  }
  return upright;
}
