import { InvalidArgumentError, Option } from 'commander';
import {
  askTable,
  formatRecord,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  stepKeptTable,
  type RecordLine,
} from '../../engine/record/index.ts';
import {
  FLIGHT_MODES,
  PLAN_FORMAT,
  playedModel,
  SENSOR_TROUBLES,
  viewTable,
  type InstrumentPlan,
  type Scorecard,
  type Table,
  type TablePlan,
} from '../../engine/table/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import { choiceOfDrill, layDrill, layPlan, parsePlanChoice } from '../../levels/index.ts';
import { accepted } from './problems.ts';
import type { DefineVerb } from './program.ts';
import { readDrill } from './readDrill.ts';
import { noticedLines } from './noticedLines.ts';
import { readFile } from './readFile.ts';
import type { Report } from './report.ts';
import { oneLine, UsageError } from './usageError.ts';
import { writeFile } from './writeFile.ts';

interface DescendOptions {
  readonly lander: string;
  readonly site: string;
  readonly world: string;
  readonly start: string;
  readonly seed: number;
  readonly mode: string;
  readonly sensorTrouble: string;
  readonly drill?: string;
  readonly standIns: StandIns;
  readonly record?: string;
}

type StandIns = InstrumentPlan['standIns'];

const DASHED = {
  lander: 'lander',
  site: 'site',
  world: 'world',
  start: 'start',
  seed: 'seed',
  mode: 'mode',
  sensorTrouble: 'sensor-trouble',
} as const satisfies Partial<Record<keyof DescendOptions, string>>;
const PLAN_OPTIONS = ['lander', 'site', 'world', 'start', 'seed', 'mode', 'sensorTrouble'] as const;
type PlanOption = (typeof PLAN_OPTIONS)[number];

/** A plan has a dozen short fields. */
const PLAN_BUDGET = { mostBytes: 4096, deepest: 4 };

export const defineDescend: DefineVerb = (command, deliver) => {
  command
    .description(
      'Flies a descent without a screen: the stand-ins hold every seat. Says how it ended, and writes the record of the table if asked, ' +
        'which `kilter replay` plays again.',
    )
    .argument('[plan]', 'a plan file as levels/schemas/plan.schema.json describes it; without one, the options below')
    .optionsGroup('Plan:')
    .option('--lander <name>', 'trivet, steeple or bolster', 'trivet')
    .option('--site <name>', 'where it lands', 'saddlers-bench')
    .option('--world <name>', 'on which world', 'moon')
    .option('--start <name>', 'far, high, middle or low', 'high')
    .option('--seed <number>', 'draws the ground, and what fails', wholeNumber, 1)
    .option('--mode <name>', `${FLIGHT_MODES.join(' or ')}: what the seat at Flying sets`, 'by hand')
    .option('--sensor-trouble <kind>', SENSOR_TROUBLES.join(' or '), 'none')
    .option(
      '--drill <name>',
      'fly this drill instead: one of `kilter drill list`, or a drill file; with --seed or its own',
    )
    .addOption(
      new Option('--stand-ins <crew>', 'of a descent by instruments').choices(['awake', 'asleep']).default('awake'),
    )
    .optionsGroup('Output:')
    .option('--record <file>', 'write the record here: JSON Lines')
    .addHelpText(
      'after',
      '\nExamples:\n  kilter descend\n  kilter descend --lander steeple --site coombe-ledge --seed 4\n  kilter descend --sensor-trouble seeded --seed 3 --record .build/descent.jsonl\n  kilter descend --drill quiet-altimeter --stand-ins asleep',
    )
    .action((file: string | undefined, options: DescendOptions) => {
      const said = PLAN_OPTIONS.filter((name) => command.getOptionValueSource(name) === 'cli');
      deliver(descend(withStandIns(planFrom(file, options, said), options), options.record));
    });
};

/** What is flown: by a drill, a plan file or options, of which those are named that somebody gave. */
function planFrom(file: string | undefined, options: DescendOptions, said: readonly PlanOption[]): TablePlan {
  const { drill: named, seed } = options;
  const [beside] = named === undefined ? said : said.filter((name) => name !== 'seed');
  if (named !== undefined && (file !== undefined || beside !== undefined)) {
    const other = file === undefined ? `--${DASHED[beside ?? 'lander']}` : `'${oneLine(file, 80)}'`;
    throw new UsageError(`expected a drill alone, with or without --seed, got ${other} too`);
  }
  if (named !== undefined) {
    const drill = readDrill(named);
    return accepted(named, layDrill(drill, choiceOfDrill(drill, said.includes('seed') ? seed : undefined)));
  }
  if (file !== undefined && beside !== undefined)
    throw new UsageError(`expected a plan file or the options of a plan, got both: '${file}' and --${DASHED[beside]}`);
  const choice = accepted(file ?? 'plan', parsePlanChoice(file === undefined ? planOf(options) : readPlan(file)));
  return accepted(file ?? 'plan', layPlan(choice));
}

/** A record does not say whether the stand-ins slept, so that one of a crew asleep would not replay. */
function withStandIns(plan: TablePlan, { standIns, record }: DescendOptions): TablePlan {
  if (standIns === 'awake') return plan;
  if (plan.instruments === undefined)
    throw new UsageError('--stand-ins asleep: expected a descent by instruments, with --drill or --sensor-trouble');
  if (record !== undefined) throw new UsageError('expected --record or --stand-ins asleep, got both');
  return { ...plan, instruments: { ...plan.instruments, standIns } };
}

function planOf({ lander, site, world, start, seed, mode, sensorTrouble }: DescendOptions): unknown {
  return { format: PLAN_FORMAT, lander, site, world, start, seed, mode, pace: 1, sensorTrouble };
}

function readPlan(file: string): unknown {
  const text = readFile(file, 'a plan', PLAN_BUDGET);
  if (text === undefined) throw new UsageError(`no file '${file}'`);
  try {
    return JSON.parse(text);
  } catch {
    throw new UsageError(`'${file}' is not JSON`);
  }
}

/** Somebody at Lead begins it and touches nothing. */
function descend(plan: TablePlan, recordFile: string | undefined): Report {
  const lines: RecordLine[] = [];
  const kept = openKeptTable({ plan, model: playedModel, write: (line) => lines.push(line) });
  const joined = joinTable(kept, 'Command line');
  if (!joined.ok) throw new Error(joined.error.reason);
  askTable(kept, joined.value, { kind: 'takeSeat', seat: 'lead' });
  askTable(kept, joined.value, { kind: 'begin' });
  while (kept.table.state.stage === 'descending') stepKeptTable(kept);
  const { scorecard } = viewTable(kept.table, joined.value);
  if (scorecard === undefined) throw new Error('a descent that has ended has a scorecard');
  if (recordFile !== undefined)
    writeFile(recordFile, formatRecord({ header: headerOf(plan), lines: [...lines, markLine(kept.table)] }));
  return reportDescent(kept.table, scorecard, recordFile);
}

function reportDescent({ plan, run, state }: Table, card: Scorecard, recordFile: string | undefined): Report {
  const { outcome, contacts, worst, belief } = card;
  const contact = contacts[worst ?? 0];
  const [first] = contacts;
  const seconds = run.flight.tick / TICK_RATE;
  const faults = state.failures.map(({ fault }) => fault);
  const injects = injectsOf(state.events);
  const lines = [
    `${plan.title}, ${plan.worldId}, seed ${plan.seed}`,
    `${outcome} after ${seconds.toFixed(1)} s`,
    contact === undefined ? 'it never met the ground' : `nearest to its limit: ${contactWords(contact)}`,
    ...injects.map(({ id, state: how, sentSeconds: [at] }) =>
      at === undefined ? `inject: ${id}, ${how}` : `inject: ${id}, at ${at.toFixed(1)} s`,
    ),
    ...faults.map(
      ({ source, kind, fromTick }) => `failed: ${source}, ${kind}, from ${(fromTick / TICK_RATE).toFixed(1)} s on`,
    ),
    ...noticedLines(card),
    ...(belief === undefined
      ? []
      : [`first contact: believed ${speeds(belief)}, true ${first === undefined ? 'none' : speeds(first.arrival)}`]),
    ...(recordFile === undefined ? [] : [`record: ${recordFile}`]),
  ];
  return {
    verb: 'descend',
    inputs: { ...plan.choice },
    results: {
      outcome,
      seconds,
      faults,
      ...(plan.drill && { course: state.events?.course ?? null, injects }),
      scorecard: card,
    },
    text: lines.join('\n'),
  };
}

/** How the event list of a drill went. */
function injectsOf(events: Table['state']['events']) {
  return Object.entries(events?.rows ?? {}).map(([id, { state, sentTicks }]) => ({
    id,
    state,
    sentSeconds: sentTicks.map((tick) => tick / TICK_RATE),
  }));
}

function speeds({ vx, descentRate }: { readonly vx: number; readonly descentRate: number }): string {
  return `${Math.abs(vx).toFixed(2)} m/s sideways, ${descentRate.toFixed(2)} m/s down`;
}

function contactWords({ arrival, limit, band }: Scorecard['contacts'][number]): string {
  const tip =
    limit === undefined
      ? 'no limit'
      : limit.tip === undefined
        ? `none up to ${limit.upTo.toFixed(2)}`
        : limit.tip.toFixed(2);
  return `${speeds(arrival)}; tip limit ${tip} m/s: ${band}`;
}

function wholeNumber(text: string): number {
  if (!/^\d{1,15}$/.test(text)) throw new InvalidArgumentError('expected a whole number from 0');
  return Number(text);
}
