/**
 * What it is worth that Site turns a weak leg uphill: Steeple comes down onto a slope, hard, by orders of somebody at Flying that are held to the ground, with one leg of a quarter of its strength that is not
 * shown locked; the stand-in at Site sleeps, or turns it. Prints the rows of levels/plans/README.md; minutes:
 *
 *   node tests/validation/plans/writeTurns.ts [seeds of each, default 200] [site ...]
 */
import { clopperPearson } from '../../../engine/dispersion/intervals.ts';
import type { Fault } from '../../../engine/faults/index.ts';
import {
  createTable,
  playedModel,
  stepTable,
  type Command,
  type InstrumentPlan,
  type Table,
} from '../../../engine/table/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { laid } from '../../support/planChoice.ts';

const [count = '200', ...wanted] = process.argv.slice(2);
const SEEDS = Number(count);
const SITES = wanted.length > 0 ? wanted : ['coombe-ledge', 'ravel-bank'];
const STRENGTH = 0.25;
/** Held to the ground: downward [dm/s], and no drift. */
const ORDERS: readonly Command[] = [
  { kind: 'orderDescentRate', tenths: 25 },
  { kind: 'orderDrift', tenths: 0 },
];

const write = (line: string) => process.stdout.write(`${line}\n`);

function fly(site: string, seed: number, standIns: InstrumentPlan['standIns']): Table {
  const plan = laid({ lander: 'steeple', site, seed, start: 'high', mode: 'by orders', sensorTrouble: 'legs' });
  const leg = seed % plan.setup.lander.legs.length;
  const faults: readonly Fault[] = [
    { source: 'legs', kind: 'legSoft', fromTick: 0, parameters: { leg, factor: STRENGTH } },
    { source: 'legs', kind: 'indicationAbsent', fromTick: 0, parameters: { leg } },
  ];
  const instruments = plan.instruments && { ...plan.instruments, standIns };
  const setup = { ...plan.setup, faults };
  const table = createTable({ plan: { ...plan, setup, ...(instruments && { instruments }) }, model: playedModel });
  joinTable(table, { name: 'Ada' });
  for (const command of [{ kind: 'takeSeat', seat: 'flying' }, { kind: 'begin' }, ...ORDERS] as const)
    commandTable(table, 'm1', command);
  while (table.state.stage === 'descending') stepTable(table);
  return table;
}

function share(successes: number, runs: number): string {
  const { low, high } = clopperPearson({ successes, runs }, 0.95);
  return `${successes} of ${runs} (${low.toFixed(2)} to ${high.toFixed(2)})`;
}

write('| site | Site | upright | turned in flight |');
write('| --- | --- | --- | --- |');
for (const site of SITES)
  for (const standIns of ['asleep', 'awake'] as const) {
    let [upright, turned] = [0, 0];
    for (let seed = 1; seed <= SEEDS; seed += 1) {
      const { run } = fly(site, seed, standIns);
      if (run.flight.outcome === 'upright') upright += 1;
      if ((run.flight.facing?.steps ?? 0) !== 0) turned += 1;
    }
    write(`| ${site} | ${standIns} | ${share(upright, SEEDS)} | ${turned} |`);
  }
