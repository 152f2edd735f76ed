/**
 * Leaves descents by instruments to the stand-ins, with nothing wrong and with a source that fails, with the stand-in at Sensors awake and asleep, and
 * prints the table of levels/plans/README.md; a quarter of an hour or more:
 *
 *   node tests/validation/plans/writeTrouble.ts [seeds of each] [lander ...]
 */
import { clopperPearson } from '../../../engine/dispersion/intervals.ts';
import type { Fault } from '../../../engine/faults/index.ts';
import { findStart, LANDERS, SITES, seededTrouble } from '../../../levels/index.ts';
import { laid } from '../../support/planChoice.ts';
import { flyByInstruments } from './flyTrouble.ts';

const words = process.argv.slice(2);
const SEEDS = Number(words.find((word) => /^\d+$/.test(word)) ?? 200);
const wanted = words.filter((word) => !/^\d+$/.test(word));
const START = findStart('high');

/** Each begins when seeded trouble would, with the same seed. */
const TROUBLES: Readonly<Record<string, (fromTick: number) => readonly Fault[]>> = {
  nothing: () => [],
  'altimeter freezes': (fromTick) => [{ source: 'altimeter', kind: 'freeze', fromTick, parameters: {} }],
  'radar takes 1 m/s on': (fromTick) => [
    { source: 'velocityRadar', channel: 'across', kind: 'bias', fromTick, parameters: { size: 1, rise: 4 } },
  ],
};

if (START === undefined) throw new Error('there is a start');
process.stdout.write(
  `upright of ${SEEDS} seeds (95 %), median descent rate at contact [m/s], from the ${START.id} start on the Moon\n\n`,
);
process.stdout.write(`| lander | fails | Sensors | ${SITES.map(({ name }) => name).join(' | ')} |\n`);
process.stdout.write(`| --- | --- | --- | ${SITES.map(() => '---').join(' | ')} |\n`);
for (const { id, name } of LANDERS.filter((lander) => wanted.length === 0 || wanted.includes(lander.id))) {
  for (const [fails, faultsFrom] of Object.entries(TROUBLES)) {
    for (const sensors of ['awake', 'asleep'] as const) {
      if (fails === 'nothing' && sensors === 'asleep') continue;
      const cells = SITES.map((site) => {
        let upright = 0;
        const rates: number[] = [];
        for (let seed = 1; seed <= SEEDS; seed++) {
          const plan = laid({ lander: id, site: site.id, seed, sensorTrouble: 'seeded' });
          const faults = faultsFrom(seededTrouble(seed, START).fromTick);
          const { outcome, touchdown } = flyByInstruments(plan, faults, sensors);
          if (outcome === 'upright') upright++;
          // what never met the ground of the site counts as no descent rate at all
          rates.push(touchdown?.descentRate ?? Infinity);
        }
        const { low, high } = clopperPearson({ successes: upright, runs: SEEDS }, 0.95);
        const median = rates.toSorted((one, other) => one - other)[Math.floor(SEEDS / 2)] ?? Infinity;
        return `${upright} (${low.toFixed(2)} to ${high.toFixed(2)}), ${median.toFixed(1)}`;
      });
      process.stdout.write(`| ${name} | ${fails} | ${sensors} | ${cells.join(' | ')} |\n`);
    }
  }
}
