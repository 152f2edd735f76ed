/**
 * Measures what P(stay upright) as Lead reads it is worth three seconds before contact, for the table in engine/estimate/README.md; a quarter of an hour:
 *
 *   node tests/validation/estimate/writeLiveCalibration.ts [seeds of each lander and site, default 140]
 *
 * All three landers onto all sites of the Moon by instruments, nothing failing, flown by what is believed toward a drift that the seed draws: from none to what any
 * of them tips at.
 */
import { pilot, STEADY } from '../../../engine/descent/index.ts';
import { clopperPearson } from '../../../engine/dispersion/index.ts';
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import { applyEntry, createTable, marginNow, playedModel, stepTable, viewTable } from '../../../engine/table/index.ts';
import { TICK_RATE } from '../../../engine/world/index.ts';
import { LANDERS, SITES } from '../../../levels/index.ts';
import { laid } from '../../support/planChoice.ts';

const EDGES = [0, 0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.98, 1] as const;
/** Before contact [s]. */
const ASKED_AT = 3;
const FASTEST_DRIFT = 3.2;
const [count = '140'] = process.argv.slice(2);

interface Told {
  readonly odds: number;
  readonly stood: boolean;
}

const all: Told[] = [];
for (const lander of LANDERS) {
  const told: Told[] = [];
  for (const site of SITES)
    for (let seed = 1; seed <= Number(count); seed++) {
      const one = flyOnce(lander.id, site.id, seed);
      if (one !== undefined) told.push(one);
    }
  all.push(...told);
  print(lander.name, told);
}
print('all', all);

function flyOnce(lander: string, site: string, seed: number): Told | undefined {
  const random = seedRandom(seed, 78);
  const drift = (nextUniform(random) < 0.5 ? -1 : 1) * FASTEST_DRIFT * nextUniform(random);
  const plan = laid({ lander, site, seed, start: 'low', sensorTrouble: 'seeded' });
  const model: typeof playedModel = {
    ...playedModel,
    createPilot: ({ setup: { lander, gravity } }) => {
      const manner = { ...STEADY, drift };
      return (state) => pilot(manner, { engine: lander.engine, gravity }, state);
    },
  };
  const instruments = { seed, standIns: 'asleep' } as const;
  const table = createTable({ plan: { ...plan, setup: { ...plan.setup, faults: [] }, instruments }, model });
  for (const content of [
    { kind: 'joined', name: 'Wren', role: 'crew' },
    { kind: 'takeSeat', seat: 'lead' },
    { kind: 'begin' },
  ] as const)
    applyEntry(table, { tick: 0, member: 'm1', content });
  let odds: number | undefined;
  let isAsked = false;
  while (table.state.stage === 'descending') {
    stepTable(table);
    if (isAsked) continue;
    const { predicted } = marginNow(table.run);
    if (predicted === undefined || predicted.seconds > ASKED_AT || table.run.flight.tick < TICK_RATE) continue;
    isAsked = true;
    ({ odds } = viewTable(table, 'm1').leadReadings ?? {});
  }
  const { outcome } = table.run.flight;
  return odds === undefined ? undefined : { odds, stood: outcome !== undefined && !outcome.startsWith('tipped') };
}

function print(name: string, told: readonly Told[]): void {
  process.stdout.write(`${name}: ${told.length} descents\n`);
  for (let i = 1; i < EDGES.length; i++) {
    const [from, to] = [EDGES[i - 1]!, EDGES[i]!];
    const inside = told.filter(({ odds }) => odds >= from && (odds < to || to === 1));
    if (inside.length === 0) continue;
    const mean = inside.reduce((sum, { odds }) => sum + odds, 0) / inside.length;
    const stood = inside.filter((one) => one.stood).length;
    const { low, high } = clopperPearson({ runs: inside.length, successes: stood }, 0.95);
    const share = `${(stood / inside.length).toFixed(3)} (${low.toFixed(3)} to ${high.toFixed(3)})`;
    process.stdout.write(`| ${from} to ${to} | ${inside.length} | ${mean.toFixed(3)} | ${share} |\n`);
  }
}
