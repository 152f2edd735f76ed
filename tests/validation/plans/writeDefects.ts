/**
 * Leaves landings on Saddler's Bench with something wrong with the engine or a leg to the stand-ins, awake and asleep, and prints the table of levels/plans/README.md:
 *
 *   node tests/validation/plans/writeDefects.ts [seeds of each, default 200]
 */
import { clopperPearson } from '../../../engine/dispersion/intervals.ts';
import { LANDERS } from '../../../levels/index.ts';
import { laid } from '../../support/planChoice.ts';
import { flyByInstruments } from './flyTrouble.ts';

const [count = '200'] = process.argv.slice(2);

for (const { id, name } of LANDERS)
  for (const sensorTrouble of ['engine', 'legs'] as const)
    for (const standIns of ['awake', 'asleep'] as const) {
      const ended = new Map<string, { upright: number; all: number }>();
      for (let seed = 1; seed <= Number(count); seed++) {
        const plan = laid({ lander: id, seed, sensorTrouble });
        const faults = plan.setup.faults ?? [];
        const kind = faults[0]?.kind ?? 'nothing';
        const so = ended.get(kind) ?? { upright: 0, all: 0 };
        const isUpright = flyByInstruments(plan, faults, standIns).outcome === 'upright';
        ended.set(kind, { upright: so.upright + Number(isUpright), all: so.all + 1 });
      }
      for (const [kind, { upright, all }] of ended) {
        const { low, high } = clopperPearson({ successes: upright, runs: all }, 0.95);
        process.stdout.write(
          `| ${name} | ${kind} | ${standIns} | ${upright} of ${all} (${low.toFixed(2)} to ${high.toFixed(2)}) |\n`,
        );
      }
    }
