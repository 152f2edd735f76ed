import type { Command } from 'commander';
import {
  mapEnvelope,
  rowLimits,
  yawDirections,
  type Envelope,
  type EnvelopeMap,
  type EnvelopeQuestion,
} from '../../engine/envelope/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import { runEnvelope } from '../workers/runEnvelope.ts';
import { toRadians } from '../../engine/math/index.ts';
import { namePlace } from './condition.ts';
import { envelopeText, type EnvelopeSetting } from './envelopeText.ts';
import { quantityOf } from './fieldOptions.ts';
import { addLandingOptions, rangedLanding, readLanding, type Landing, type LandingOptions } from './landingOptions.ts';
import { addLongOptions, withProgress, type LongOptions } from './longWork.ts';
import type { DefineVerb } from './program.ts';
import { quantityParser, YAWS, type Quantity } from './quantity.ts';
import { readLander } from './readLander.ts';
import type { Report } from './report.ts';
import { UsageError } from './usageError.ts';
import { worldOf } from './worldOptions.ts';

interface EnvelopeOptions extends LandingOptions, LongOptions {
  readonly from?: number;
  readonly to?: number;
  readonly descentFrom?: number;
  readonly descentTo?: number;
  readonly steps?: number;
  readonly yaws?: number;
  readonly yaw?: number;
  readonly coarse?: number;
  readonly halvings?: number;
  readonly every?: boolean;
}

const HORIZONTAL = quantityOf('horizontalSpeed');
const DESCENT = quantityOf('descentRate');
const STEPS: Quantity = { unit: 'steps', least: 1, most: 400, whole: true };
const TURN = quantityOf('yawDeg');
const COARSE: Quantity = { unit: 'steps', least: 1, most: 400, whole: true };
const HALVINGS: Quantity = { unit: '', least: 0, most: 20, whole: true };

const DEFAULTS = {
  from: -4,
  to: 4,
  descentFrom: 0,
  descentTo: 4,
  steps: 40,
  yaws: 24,
  coarse: 4,
  halvings: 4,
} as const;

export const defineEnvelope: DefineVerb = (command, deliver) => {
  addGrid(command.argument('<lander>', 'built-in lander (trivet, steeple, bolster) or the path of a lander file'));
  addLongOptions(addLandingOptions(command))
    .optionsGroup('Output:')
    .option('--csv', 'print every node of the grid as CSV')
    .description(
      'Velocity envelope: which pairs of horizontal speed and descent rate the lander survives in simulation, for one yaw or ' +
        'the worst of many, and what ends it elsewhere.',
    )
    .addHelpText(
      'after',
      `
Horizontal speed is signed, + in the direction of travel: with --slope, downhill. The first pass looks at every --coarse-th step and
refines where classes differ; a feature thinner than that may be missed unless --every node is simulated. Ctrl-C prints what is
known so far.

Examples:
  kilter envelope trivet --steps 8 --yaws 2
  kilter envelope bolster --slope 5 --steps 8 --yaw 0 --json`,
    )
    .action(async (word: string, options: EnvelopeOptions) => {
      const lander = readLander(word);
      const landing = readLanding(lander, options);
      const question = questionOf(lander, landing, options);
      const envelope = await withProgress(options, 'jobs', (work) => runEnvelope(question, work));
      deliver(reportEnvelope(word, options, landing, envelope));
    });
};

function addGrid(command: Command): Command {
  return command
    .optionsGroup('Grid:')
    .option('--from <m/s>', `lowest horizontal speed (default: ${DEFAULTS.from})`, quantityParser(HORIZONTAL))
    .option('--to <m/s>', `highest horizontal speed (default: ${DEFAULTS.to})`, quantityParser(HORIZONTAL))
    .option('--descent-from <m/s>', `lowest descent rate (default: ${DEFAULTS.descentFrom})`, quantityParser(DESCENT))
    .option('--descent-to <m/s>', `highest descent rate (default: ${DEFAULTS.descentTo})`, quantityParser(DESCENT))
    .option('--steps <number>', `steps along each side of the grid (default: ${DEFAULTS.steps})`, quantityParser(STEPS))
    .option('--yaws <number>', `the worst of so many yaws all round (default: ${DEFAULTS.yaws})`, quantityParser(YAWS))
    .option('--yaw <deg>', 'one yaw instead', quantityParser(TURN))
    .option(
      '--coarse <steps>',
      `first pass at every so many steps (default: ${DEFAULTS.coarse})`,
      quantityParser(COARSE),
    )
    .option(
      '--halvings <number>',
      `of each step that the boundary crosses (default: ${DEFAULTS.halvings})`,
      quantityParser(HALVINGS),
    )
    .option('--every', 'simulate every node of the grid');
}

function questionOf(lander: Lander, landing: Landing, options: EnvelopeOptions): EnvelopeQuestion {
  if (options.yaw !== undefined && options.yaws !== undefined)
    throw new UsageError('expected --yaw or --yaws, got both');
  const { from, to, descentFrom, descentTo, steps, coarse, halvings } = { ...DEFAULTS, ...options };
  if (from >= to) throw new UsageError(`expected --from below --to, got ${from} and ${to}`);
  if (descentFrom >= descentTo)
    throw new UsageError(`expected --descent-from below --descent-to, got ${descentFrom} and ${descentTo}`);
  const yaws =
    options.yaw === undefined ? yawDirections(options.yaws ?? DEFAULTS.yaws) : [{ yaw: toRadians(options.yaw) }];
  const { travelAzimuth } = landing;
  return {
    lander,
    conditions: landing.conditions,
    horizontalSpeed: { from, to, count: steps + 1 },
    descentRate: { from: descentFrom, to: descentTo, count: steps + 1 },
    directions: yaws.map(({ yaw }) => ({ yaw: travelAzimuth + yaw, travelAzimuth })),
    coarse,
    halvings,
    every: options.every === true,
  };
}

function settingOf(options: EnvelopeOptions, { words }: Landing): EnvelopeSetting {
  const { yaw, yaws = DEFAULTS.yaws } = options;
  const looked = yaw === undefined && yaws > 1 ? `the worst of ${yaws} yaws` : `yaw ${yaw ?? 0} deg`;
  return { place: namePlace(worldOf(options)), looked, words };
}

function reportEnvelope(word: string, options: EnvelopeOptions, landing: Landing, envelope: Envelope): Report {
  const { question } = envelope;
  const map = mapEnvelope(envelope);
  const limits = map.isDone ? rowLimits(envelope) : [];
  const inputs = {
    lander: word,
    ...landing.inputs,
    horizontalSpeed: question.horizontalSpeed,
    descentRate: question.descentRate,
    yaws: question.directions.length,
    yawDeg: options.yaw ?? null,
    coarse: question.coarse,
    halvings: question.halvings,
    every: question.every,
  };
  const rowsOf = <Cell>(cell: (node: EnvelopeMap['nodes'][number]) => Cell): readonly (readonly Cell[])[] =>
    Array.from({ length: map.rows }, (_, row) => map.nodes.slice(row * map.columns, (row + 1) * map.columns).map(cell));
  return {
    verb: 'envelope',
    inputs,
    ranged: { 'touchdown simulation': rangedLanding(question.lander, options, landing) },
    results: {
      isPartial: !map.isDone,
      siteSlopeDeg: landing.siteSlopeDeg ?? null,
      runs: map.runs,
      simulated: map.simulated,
      unknown: map.unknown,
      counts: map.counts,
      classes: rowsOf((node) => node.class ?? null),
      knowledge: rowsOf((node) => node.knowledge),
      rowLimits: limits,
      boundary: map.lines.map((line) =>
        line.map(({ horizontalSpeed, descentRate, class: limit }) => ({ horizontalSpeed, descentRate, class: limit })),
      ),
    },
    text: envelopeText(question, settingOf(options, landing), map, limits),
    csv: {
      names: ['horizontalSpeed', 'descentRate', 'class', 'knowledge', 'leastMargin'],
      rows: map.nodes.map((node) => [
        node.horizontalSpeed,
        node.descentRate,
        node.class,
        node.knowledge,
        node.leastMargin,
      ]),
    },
    isPartial: !map.isDone,
  };
}
