/**
 * Error of the shipped tables of limits against a direct search, for engine/table/README.md; a minute or so a lander:
 *
 *   node tests/validation/table/tableError.ts [contacts, default 300] [lander ...]
 *   node tests/validation/table/tableError.ts turned [contacts of each edge, default 300] [lander ...]
 *
 * Over contacts drawn evenly from all that a table holds, for travel to the right, for which the entries are, and to the left; `turned`: to the right, over each
 * other edge of the footprint that a turn about the long axis brings there.
 */
import { seedRandom } from '../../../engine/math/random.ts';
import { layOutSection } from '../../../engine/world/layOutSection.ts';
import { LANDERS } from '../../../levels/index.ts';
import { SEED } from './countBands.ts';
import { tableErrors, TRAVELS } from './tableErrors.ts';

/** Ends of the range that holds 95 of 100. */
const [LOW, HIGH] = [0.025, 0.975];
const said = process.argv.slice(2);
const isTurned = said[0] === 'turned';
const [count = '300', ...wanted] = isTurned ? said.slice(1) : said;

for (const lander of LANDERS) {
  if (wanted.length > 0 && !wanted.includes(lander.id)) continue;
  const others = Array.from({ length: layOutSection(lander, 0).facings.length - 1 }, (_, i) => i + 1);
  const cases = isTurned
    ? others.map((facing) => ({ travel: 'right', facing }) as const)
    : TRAVELS.map((travel) => ({ travel, facing: 0 }));
  for (const { travel, facing } of cases) {
    const errors = tableErrors(lander, travel, seedRandom(SEED), Number(count), facing);
    const rising = errors.toSorted((a, b) => a.error - b.error);
    const at = (share: number) => rising[Math.round(share * (rising.length - 1))]!.error.toFixed(3);
    const above = rising.filter(({ error, tolerance }) => error > tolerance);
    process.stdout.write(
      `${lander.id} turned by ${facing}, to the ${travel}: median ${at(0.5)}, 95 % from ${at(LOW)} to ${at(HIGH)}, lowest ${at(0)}, highest ${at(1)}, above ${above.length} of ${rising.length}\n`,
    );
    for (const one of above.toReversed().slice(0, 5)) process.stdout.write(`  ${JSON.stringify(one)}\n`);
  }
}
