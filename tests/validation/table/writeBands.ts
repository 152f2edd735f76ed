/**
 * Counts how often each band of the live margin falls, for the table in engine/table/README.md; minutes a lander:
 *
 *   node tests/validation/table/writeBands.ts [arrivals, default 20000] [lander ...]
 *
 * To be run again after every change of the touchdown simulation, of the tables of limits, or of the edges in marginBand.ts.
 */
import { clopperPearson } from '../../../engine/dispersion/index.ts';
import { seedRandom } from '../../../engine/math/random.ts';
import { MARGIN_BANDS } from '../../../engine/table/index.ts';
import { LANDERS } from '../../../levels/index.ts';
import { arrivalDrawer } from './plausibleArrivals.ts';
import { countBands, SEED } from './countBands.ts';

const CONFIDENCE = 0.95;
const [count = '20000', ...wanted] = process.argv.slice(2);

for (const lander of LANDERS) {
  if (wanted.length > 0 && !wanted.includes(lander.id)) continue;
  const bands = countBands(arrivalDrawer(lander, seedRandom(SEED)), Number(count));
  for (const band of MARGIN_BANDS) {
    const { runs, falls } = bands[band];
    const { low, high } = clopperPearson({ runs, successes: falls }, CONFIDENCE);
    const share = `${(1000 * falls) / runs} in 1000 (${1000 * low} to ${1000 * high})`;
    process.stdout.write(`${lander.id} ${band}: ${falls} of ${runs} fall, ${share}\n`);
  }
  process.stdout.write(`${lander.id} without a number: ${bands.none.falls} of ${bands.none.runs} fall\n`);
}
