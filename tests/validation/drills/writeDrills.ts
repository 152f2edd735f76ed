/**
 * Leaves each drill to the stand-ins, awake and asleep, and prints the table of levels/drills/README.md; half an hour or more:
 *
 *   node tests/validation/drills/writeDrills.ts [seeds of each] [drill ...]
 */
import { clopperPearson } from '../../../engine/dispersion/intervals.ts';
import { DRILLS } from '../../../levels/index.ts';
import { flyDrill } from './flyDrill.ts';

const words = process.argv.slice(2);
const SEEDS = Number(words.find((word) => /^\d+$/.test(word)) ?? 200);
const wanted = words.filter((word) => !/^\d+$/.test(word));

/** Of one course of a drill with one crew. */
interface Tally {
  runs: number;
  inside: number;
  seconds: number;
  readonly ends: Map<string, number>;
}

process.stdout.write(
  '| drill | course | stand-ins | inside limit | share (95 %) | how the others ended | mean time [s] |\n',
);
process.stdout.write('| --- | --- | --- | --- | --- | --- | --- |\n');
for (const drill of DRILLS.filter(({ id }) => wanted.length === 0 || wanted.includes(id))) {
  for (const standIns of ['awake', 'asleep'] as const) {
    const tallies = new Map<string, Tally>();
    for (let seed = 1; seed <= SEEDS; seed++) {
      const { table, card } = flyDrill(drill, seed, standIns);
      const course = table.state.events?.course ?? '';
      const tally = tallies.get(course) ?? { runs: 0, inside: 0, seconds: 0, ends: new Map<string, number>() };
      tallies.set(course, tally);
      tally.runs++;
      tally.seconds += table.run.flight.tick / 60;
      if (card.outcome === 'upright inside limit') tally.inside++;
      else tally.ends.set(card.outcome, (tally.ends.get(card.outcome) ?? 0) + 1);
    }
    for (const [course, { runs, inside, seconds, ends }] of tallies) {
      const { low, high } = clopperPearson({ successes: inside, runs }, 0.95);
      const others = [...ends].map(([outcome, count]) => `${outcome} ${count}`).join(', ');
      const cells = [drill.title, course, standIns, `${inside} of ${runs}`, `${low.toFixed(2)} to ${high.toFixed(2)}`];
      process.stdout.write(`| ${[...cells, others, (seconds / runs).toFixed(0)].join(' | ')} |\n`);
    }
  }
}
