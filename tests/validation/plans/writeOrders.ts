/**
 * Flies every lander over every site by three orders for the descent rate and one for the drift, and prints the table of levels/plans/README.md; then leaves
 * as many alone. Some ten minutes:
 *
 *   node tests/validation/plans/writeOrders.ts [seeds of each]
 */
import { orderedPilot, type Orders } from '../../../engine/descent/index.ts';
import { createTable, playedModel, type PlanChoice } from '../../../engine/table/index.ts';
import type { DescentState } from '../../../engine/world/index.ts';
import { LANDERS, SITES, STARTS } from '../../../levels/index.ts';
import { laid } from '../../support/planChoice.ts';
import { flyPlan } from './flyPlan.ts';

const SEEDS = Number(process.argv[2] ?? 200);

/** Below which height [m] which descent rate is ordered [dm/s]. */
const SINK: readonly (readonly [below: number, tenths: number])[] = [
  [12, 8],
  [40, 15],
  [Infinity, 30],
];

const write = (line: string) => process.stdout.write(`${line}\n`);

function byScript({ height }: DescentState): Orders {
  const [, descentRateTenths = 0] = SINK.find(([below]) => height < below) ?? [];
  return { descentRateTenths, across: 'drift', driftTenths: 0, leanDeg: 0 };
}

/** Outcomes of descents, and the median of the descent rates at first contact [m/s]. */
function flyAll(said: Partial<PlanChoice>, orders: (plan: ReturnType<typeof laid>) => (state: DescentState) => Orders) {
  const finals = Array.from({ length: SEEDS }, (_, i) => {
    const plan = laid({ ...said, mode: 'by orders', seed: i + 1 });
    const { lander, gravity } = plan.setup;
    const ordered = orders(plan);
    return flyPlan(plan, (state) => orderedPilot(ordered(state), { engine: lander.engine, gravity }, state));
  });
  const rates = finals.map(({ touchdown }) => touchdown?.descentRate ?? NaN).toSorted((a, b) => a - b);
  const tally = new Map<string, number>();
  for (const { outcome = 'none' } of finals) tally.set(outcome, (tally.get(outcome) ?? 0) + 1);
  return { tally, median: rates[Math.floor(rates.length / 2)] ?? NaN };
}

write(`Upright of ${SEEDS} by orders; median descent rate at contact [m/s]`);
write(`| lander | ${SITES.map(({ name }) => name).join(' | ')} |`);
write(`| ------ | ${SITES.map(() => '---').join(' | ')} |`);
for (const lander of LANDERS) {
  const cells = SITES.map((site) => {
    const { tally, median } = flyAll({ lander: lander.id, site: site.id }, () => byScript);
    return `${tally.get('upright') ?? 0}; ${median.toFixed(1)}`;
  });
  write(`| ${lander.name} | ${cells.join(' | ')} |`);
}

write(`\nLeft alone, ${SEEDS} of each lander and start over Saddler's Bench`);
for (const lander of LANDERS) {
  for (const start of STARTS) {
    const { tally } = flyAll({ lander: lander.id, start: start.id }, (plan) => {
      const { orders } = createTable({ plan, model: playedModel }).state;
      if (orders === undefined) throw new Error('a descent by orders begins with orders');
      return () => orders;
    });
    write(`${lander.name}, ${start.id}: ${[...tally].map(([outcome, count]) => `${count} ${outcome}`).join(', ')}`);
  }
}
