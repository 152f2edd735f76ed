/**
 * Flies Steeple with one leg of a quarter of its strength onto Coombe Ledge, hard, by orders that are held to the ground: the weak leg where the ground is higher, and where it is
 * lower. Prints the row of levels/plans/README.md; half a minute and more:
 *
 *   node tests/validation/plans/writeSoftLeg.ts [seeds of each, default 200]
 */
import { orderedPilot, type Orders } from '../../../engine/descent/index.ts';
import { clopperPearson } from '../../../engine/dispersion/intervals.ts';
import type { Fault } from '../../../engine/faults/index.ts';
import type { TablePlan } from '../../../engine/table/index.ts';
import { createDescent, readDescent, type DescentState } from '../../../engine/world/index.ts';
import { laid } from '../../support/planChoice.ts';
import { flyPlan } from './flyPlan.ts';

const SEEDS = Number(process.argv[2] ?? 200);
const STRENGTH = 0.25;
/** Held to the ground [dm/s]. */
const RATE = 25;

const write = (line: string) => process.stdout.write(`${line}\n`);

function fly(plan: TablePlan, tenths: number, faults: readonly Fault[]): DescentState {
  const { lander, gravity } = plan.setup;
  const craft = { engine: lander.engine, gravity };
  const orders: Orders = { descentRateTenths: tenths, across: 'drift', driftTenths: 0, leanDeg: 0 };
  const setup = { ...plan.setup, faults };
  return flyPlan({ ...plan, setup }, (state) => orderedPilot(orders, craft, state));
}

/** The leg that stands farthest out on a side of the section while it is upright, as at the start: 1 right, -1 left. */
function outermost({ setup }: TablePlan, side: number): number {
  const { legs, x } = readDescent(createDescent(setup));
  const outs = legs.map(({ footX }) => side * (footX - x));
  return outs.indexOf(Math.max(...outs));
}

const soft = (leg: number): Fault => ({
  source: 'legs',
  kind: 'legSoft',
  fromTick: 0,
  parameters: { leg, factor: STRENGTH },
});

function share(upright: number): string {
  const { low, high } = clopperPearson({ successes: upright, runs: SEEDS }, 0.95);
  return `${upright} (${low.toFixed(2)} to ${high.toFixed(2)})`;
}

write('| down [m/s] | all sound | weak leg uphill | weak leg downhill |');
write('| --- | --- | --- | --- |');
const stood = [0, 0, 0];
for (let seed = 1; seed <= SEEDS; seed += 1) {
  const plan = laid({ lander: 'steeple', site: 'coombe-ledge', seed, start: 'low', mode: 'by orders' });
  const sound = fly(plan, RATE, []);
  const uphill = (sound.touchdown?.slope ?? 0) > 0 ? 1 : -1;
  const others = [uphill, -uphill].map((side) => fly(plan, RATE, [soft(outermost(plan, side))]));
  for (const [at, { outcome }] of [sound, ...others].entries())
    if (outcome === 'upright') stood[at] = (stood[at] ?? 0) + 1;
}
write(`| ${RATE / 10} | ${stood.map(share).join(' | ')} |`);
