import type { Command } from 'commander';
import { standaloneSvg } from '../../engine/plot/index.ts';
import {
  gainOver,
  GRID_KEY,
  gridDrawing,
  gridPoints,
  gridTable,
  SHAPE_FACTS,
  SHAPE_FIELDS,
  tradeDrawing,
  tradeTable,
  whatBuysMost,
  type ShapeField,
  type StudyCase,
  type Trade,
  type TradeGain,
  type TradeGrid,
  type TradePoint,
} from '../../engine/study/index.ts';
import { addLongOptions, withProgress, type LongOptions } from './longWork.ts';
import type { DefineVerb } from './program.ts';
import { numbersParser, textParser, type Quantity } from './quantity.ts';
import { readLander } from './readLander.ts';
import type { Report } from './report.ts';
import { addStudyOptions, echoStudy, rangedStudy, readStudy, studyWords, type StudyOptions } from './studyOptions.ts';
import { fieldsParser } from './tradeOptions.ts';
import { findGrid, findTrades } from './tradeRuns.ts';
import { gridText, tradeText } from './tradeText.ts';
import { UsageError } from './usageError.ts';
import { writeFile } from './writeFile.ts';

interface TradeOptions extends StudyOptions, LongOptions {
  readonly vary?: readonly ShapeField[];
  readonly values?: readonly number[];
  readonly against?: readonly ShapeField[];
  readonly againstValues?: readonly number[];
  readonly svg?: string;
}

const ANY_NUMBER: Quantity = { unit: '', least: -1e9, most: 1e9 };

export const defineTrade: DefineVerb = (command, deliver) => {
  addStudyOptions(
    command.argument('<lander>', 'built-in lander (trivet, steeple, bolster) or the path of a lander file'),
  );
  addLongOptions(addTradeOptions(command))
    .optionsGroup('Output:')
    .option('--csv', 'print a row for each lander tried as CSV')
    .option('--svg <file>', 'draw the limits into a new file', textParser)
    .description(
      'Trades: the simulated limit, tipping or a leg used up, as one dimension of the lander changes, or two against each other, with mass and ' +
        'margin, and which dimension buys most.',
    )
    .addHelpText(
      'after',
      `
Dimensions, in SI; the rest of the lander follows by a stated rule:
${SHAPE_FIELDS.map((field) => `  ${field.padEnd(13)}${SHAPE_FACTS[field].meaning}${unitOf(field)}`).join('\n')}
Every lander tried takes as long as kilter limit does. Ctrl-C stops it, with nothing to show.

Examples:
  kilter trade trivet --slope 5
  kilter trade trivet --vary footRadius --values 1.8,2.5 --svg trade.svg
  kilter trade trivet --vary footRadius --against centerHeight --csv`,
    )
    .action(async (word: string, options: TradeOptions) => {
      const lander = readLander(word);
      const asked = readStudy(lander, options);
      const { against } = options;
      deliver(
        against === undefined
          ? await reportTrades(word, options, asked)
          : await reportGrid(word, options, asked, against),
      );
    });
};

function addTradeOptions(command: Command): Command {
  return command
    .optionsGroup('Trade:')
    .option(
      '--vary <fields>',
      'dimensions to change, one at a time, such as footRadius,mass (default: all)',
      fieldsParser,
    )
    .option(
      '--values <numbers>',
      'with one dimension: its values (default: 70 to 130 % of what it is)',
      numbersParser(ANY_NUMBER),
    )
    .option('--against <field>', 'with one dimension: a second one that changes as well', fieldsParser)
    .option('--against-values <numbers>', 'values of the second', numbersParser(ANY_NUMBER));
}

function unitOf(field: ShapeField): string {
  const { unit } = SHAPE_FACTS[field];
  return unit === '-' ? '' : ` [${unit}]`;
}

async function reportTrades(word: string, options: TradeOptions, asked: StudyCase): Promise<Report> {
  const fields = options.vary ?? SHAPE_FIELDS;
  if (options.values !== undefined && fields.length !== 1)
    throw new UsageError('--values goes with --vary and one dimension');
  if (options.againstValues !== undefined) throw new UsageError('--against-values goes with --against');
  const trades = await withProgress(options, 'landers', (work) => findTrades(asked, fields, options.values, work));
  const setting = studyWords(options, asked);
  const inputs = { lander: word, ...echoStudy(options, asked), vary: fields, values: options.values ?? null };
  if (trades === undefined) return stopped(inputs);
  if (options.svg !== undefined)
    writeFile(options.svg, standaloneSvg(tradeDrawing(trades, asked.horizontalSpeed), [setting]));
  return {
    verb: 'trade',
    inputs,
    ranged: { 'touchdown simulation': rangedStudy(asked) },
    results: { isPartial: false, trades: trades.map(plainTrade), bought: whatBuysMost(trades) },
    text: tradeText(setting, trades),
    csv: tradeTable(trades),
    csvHead: [setting],
  };
}

/** Every name there is, null where there is no number. */
function plainTrade({ field, present, points }: Trade): Readonly<Record<string, unknown>> {
  const now = points.find(({ value }) => value === present);
  return {
    field,
    unit: SHAPE_FACTS[field].unit,
    present,
    points: points.map((point) => ({ value: point.value, ...plainPoint(point, now && gainOver(now, point)) })),
  };
}

function plainPoint(
  { mass, tip, gear, limit, margin, note }: TradePoint,
  gained: TradeGain | undefined,
): Readonly<Record<string, unknown>> {
  return {
    mass: mass ?? null,
    tip: tip ?? null,
    gear: gear ?? null,
    limit: limit ?? null,
    margin: margin ?? null,
    gain: gained?.gain ?? null,
    addedMass: gained?.added ?? null,
    gainPerKilogram: gained?.perKilogram ?? null,
    note: note ?? null,
  };
}

async function reportGrid(
  word: string,
  options: TradeOptions,
  asked: StudyCase,
  against: readonly ShapeField[],
): Promise<Report> {
  const [vary, second] = [options.vary?.[0], against[0]];
  if (
    options.vary?.length !== 1 ||
    against.length !== 1 ||
    vary === undefined ||
    second === undefined ||
    vary === second
  )
    throw new UsageError('--against goes with --vary: one dimension each, and not the same');
  const axes = { vary, against: second, values: options.values, againstValues: options.againstValues };
  const grid = await withProgress(options, 'landers', (work) => findGrid(asked, axes, work));
  const setting = studyWords(options, asked);
  const inputs = { lander: word, ...echoStudy(options, asked), vary: [vary], against: second };
  if (grid === undefined) return stopped(inputs);
  if (options.svg !== undefined)
    writeFile(options.svg, standaloneSvg(gridDrawing(grid, asked.horizontalSpeed), [setting, GRID_KEY]));
  return {
    verb: 'trade',
    inputs,
    ranged: { 'touchdown simulation': rangedStudy(asked) },
    results: { isPartial: false, grid: plainGrid(grid) },
    text: gridText(setting, grid),
    csv: gridTable(grid),
    csvHead: [setting],
  };
}

/** Points row by row, as the drawing has them from the bottom up. */
function plainGrid(grid: TradeGrid): Readonly<Record<string, unknown>> {
  const { vary, against, values, againstValues, present } = grid;
  const points = gridPoints(grid).map(({ point, gain }) => plainPoint(point, gain));
  return {
    vary,
    against,
    values,
    againstValues,
    present: { [vary]: present[vary], [against]: present[against] },
    points: againstValues.map((_, row) => points.slice(row * values.length, (row + 1) * values.length)),
  };
}

function stopped(inputs: Report['inputs']): Report {
  return {
    verb: 'trade',
    inputs,
    results: { isPartial: true },
    text: 'PARTIAL: stopped before every lander was simulated.',
    isPartial: true,
  };
}
