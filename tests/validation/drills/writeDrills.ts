/**
 * Leaves each drill to the stand-ins, awake and asleep, and prints the table of levels/drills/README.md. To judge a landing takes longer than to fly it, so
 * that fewer may be judged than flown; a quarter of an hour or more for 200 of both:
 *
 *   node tests/validation/drills/writeDrills.ts [seeds of each] [of which judged] [drill ...]
 */
import { clopperPearson } from '../../../engine/dispersion/intervals.ts';
import { DRILLS } from '../../../levels/index.ts';
import { cardOf, flyDrill } from './flyDrill.ts';

const words = process.argv.slice(2);
const [SEEDS = 200, JUDGED = SEEDS] = words.filter((word) => /^\d+$/.test(word)).map(Number);
const wanted = words.filter((word) => !/^\d+$/.test(word));

/** Of one course of a drill with one crew. */
interface Tally {
  runs: number;
  upright: number;
  judged: number;
  inside: number;
  seconds: number;
  readonly ends: Map<string, number>;
}

function share(successes: number, runs: number): string {
  const { low, high } = clopperPearson({ successes, runs }, 0.95);
  return `${successes} of ${runs} (${low.toFixed(2)} to ${high.toFixed(2)})`;
}

process.stdout.write(
  '| drill | course | stand-ins | upright | inside limit | how the others ended | mean time [s] |\n',
);
process.stdout.write('| --- | --- | --- | --- | --- | --- | --- |\n');
for (const drill of DRILLS.filter(({ id }) => wanted.length === 0 || wanted.includes(id))) {
  for (const standIns of ['awake', 'asleep'] as const) {
    const tallies = new Map<string, Tally>();
    for (let seed = 1; seed <= SEEDS; seed++) {
      const table = flyDrill(drill, seed, standIns);
      const { outcome = 'none', tick } = table.run.flight;
      const course = table.state.events?.course ?? '';
      const none = { runs: 0, upright: 0, judged: 0, inside: 0, seconds: 0, ends: new Map<string, number>() };
      const tally = tallies.get(course) ?? none;
      tallies.set(course, tally);
      tally.runs++;
      tally.seconds += tick / 60;
      if (outcome === 'upright') tally.upright++;
      else tally.ends.set(outcome, (tally.ends.get(outcome) ?? 0) + 1);
      if (seed > JUDGED) continue;
      tally.judged++;
      if (outcome === 'upright' && cardOf(table).outcome === 'upright inside limit') tally.inside++;
    }
    for (const [course, { runs, upright, judged, inside, seconds, ends }] of tallies) {
      const others = [...ends].map(([outcome, count]) => `${outcome} ${count}`).join(', ');
      const cells = [drill.title, course, standIns, share(upright, runs), share(inside, judged), others];
      process.stdout.write(`| ${[...cells, (seconds / runs).toFixed(0)].join(' | ')} |\n`);
    }
  }
}
