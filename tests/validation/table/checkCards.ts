/**
 * Flies descents with late controls at random and looks for scorecards that say what they must not; some minutes a lander:
 *
 *   node tests/validation/table/checkCards.ts [descents, default 500] [first seed, default 20261130] [lander ...]
 *
 * One descent again: its seed, and 1 descent.
 */
import { playedModel } from '../../../engine/table/index.ts';
import { LANDERS } from '../../../levels/index.ts';
import { SEED } from './countBands.ts';
import { flyLate } from './flyLate.ts';
import { describeFlight, oddities } from './oddCards.ts';

const [count = '500', first = String(SEED), ...wanted] = process.argv.slice(2);

for (const lander of LANDERS) {
  if (wanted.length > 0 && !wanted.includes(lander.id)) continue;
  const outcomes = new Map<string, number>();
  const odd = new Map<string, number>();
  let later = 0;
  for (let seed = Number(first); seed < Number(first) + Number(count); seed++) {
    const flight = flyLate(lander, seed);
    const card = playedModel.scorecard(flight.final, flight.setup);
    outcomes.set(card.outcome, (outcomes.get(card.outcome) ?? 0) + 1);
    if (card.worst !== undefined && card.worst > 0) later += 1;
    for (const what of oddities(card, flight)) {
      odd.set(what, (odd.get(what) ?? 0) + 1);
      process.stdout.write(`${lander.id} ${seed} ${what}: ${describeFlight(flight, card)}\n`);
    }
  }
  process.stdout.write(`${lander.id}: ${count} descents, worst is not the first contact in ${later}\n`);
  process.stdout.write(
    `  ${JSON.stringify(Object.fromEntries(outcomes))}\n  odd: ${JSON.stringify(Object.fromEntries(odd))}\n`,
  );
}
