import { figure, lowerFigure, upperFigure } from '../../engine/figures.ts';
import { INPUT_FACTS, type Campaign, type CampaignInput, type CampaignSummary } from '../../engine/dispersion/index.ts';
import { barPlot, linePlot, type Plot } from '../../engine/plot/index.ts';
import {
  LIMIT_RULE,
  MASS_RULE,
  SHAPE_FACTS,
  tradeDrawing,
  valueWords,
  whatBuysLines,
  whatBuysMost,
} from '../../engine/study/index.ts';
import { describeLeg, drawnFigure } from '../cli/campaignRows.ts';
import { requirementText } from '../cli/requirementText.ts';
import type { BoardFindings } from './boardFindings.ts';
import type { BoardQuestion } from './boardQuestion.ts';
import { list, paragraph, type Sheet, type SheetColumn } from './sheet.ts';

const RIGHT = (heading: string): SheetColumn => ({ heading, align: 'right' });

/** Shares of outcomes with intervals, and the verdict on the requirement. */
export function campaignPart(
  { campaign, isStandardCampaign }: BoardQuestion,
  { summary, margins }: BoardFindings,
  sheet: Sheet,
): string {
  const { outcomes, requirement, independent } = summary;
  const drawn = isStandardCampaign
    ? 'They are not drawn round the arrival above; a campaign file states others.'
    : 'The spreads are those of the campaign file.';
  return [
    paragraph(
      `${campaign.title}: ${campaign.runs} arrivals drawn, method ${campaign.method}, seed ${campaign.seed}, at ${figure(campaign.gravity, 3)} m/s^2. ${drawn}`,
    ),
    sheet.table({
      caption: 'What is drawn for each arrival.',
      columns: [{ heading: 'input' }, { heading: 'unit' }, { heading: 'distribution' }],
      rows: drawnRows(campaign),
    }),
    sheet.table({
      caption: `How they ended. Intervals: exact (Clopper-Pearson), 95 %${independent ? '' : '; they take the draws as independent, which these are not'}.`,
      columns: [{ heading: 'outcome' }, RIGHT('count'), RIGHT('share [%]'), RIGHT('from [%]'), RIGHT('to [%]')],
      rows: outcomes.map(({ outcome, count, fraction, clopperPearson95: { low, high } }) => [
        outcome,
        String(count),
        figure(100 * fraction, 2),
        lowerFigure(100 * low, 2),
        upperFigure(100 * high, 2),
      ]),
    }),
    requirement === undefined
      ? paragraph('No requirement was stated: no verdict.')
      : `<div class="answer">${requirementText(requirement)
          .split('\n')
          .map((line) => paragraph(line))
          .join('')}</div>\n`,
    sheet.figure(marginPlot(margins), marginCaption(margins)),
    sheet.table({
      caption: 'Measures over all arrivals. Those that tipped or timed out rank as worst, without a value ("cut off").',
      columns: [{ heading: 'measure' }, { heading: 'unit' }, RIGHT('least'), RIGHT('median'), RIGHT('greatest')],
      rows: measureRows(summary),
    }),
  ].join('\n');
}

/** Inputs drawn alone, in pairs, and the states of the gear. */
function drawnRows({ inputs, pairs, gear = [] }: Campaign): readonly (readonly string[])[] {
  return [
    ...Object.entries(inputs).map(([input, given]) => [inputWords(input), unitOf(input), distributionWords(given)]),
    ...pairs.map(({ inputs: names, ...given }) => [
      names.map(inputWords).join(' and '),
      names.map(unitOf).join(', '),
      distributionWords({ kind: 'normal pair', ...given }),
    ]),
    ...gear.map(({ value, weight }) => [
      'landing gear',
      '-',
      `weight ${weight}: ${value.length === 0 ? 'all sound' : value.map(describeLeg).join(', ')}`,
    ]),
  ];
}

/** Points of the curve; more would not be seen. */
const CURVE_POINTS = 200;

/** Which share of the arrivals has less margin than a value. Those that tipped come before all others, without a value. */
function marginPlot({ sorted, cutOff }: BoardFindings['margins']): Plot {
  const all = sorted.length + cutOff;
  const every = Math.max(1, Math.floor(sorted.length / CURVE_POINTS));
  const points = sorted.flatMap((margin, i) =>
    i % every === 0 || i === sorted.length - 1 ? [{ x: margin, y: (100 * (cutOff + i)) / all }] : [],
  );
  return linePlot({
    label: 'Least margin over all arrivals',
    x: 'least margin of an arrival that stays up [m]',
    y: 'arrivals with less [%]',
    series: [{ name: 'arrivals', stroke: { ink: 'ink', width: 2 }, points }],
  });
}

function marginCaption({ sorted, cutOff }: BoardFindings['margins']): string {
  return `Least margin, plumb line of the center of mass inside the footprint, of ${sorted.length + cutOff} arrivals; ${cutOff} tipped or were not decided and come before the curve begins.`;
}

function measureRows({ measures }: CampaignSummary): readonly (readonly string[])[] {
  return measures.map(({ measure, unit, least, quantiles, greatest }) => {
    const median = quantiles.find(({ share }) => share === 0.5)?.value;
    return [MEASURE_WORDS[measure], unit, measured(least), measured(median), measured(greatest)];
  });
}

function measured(value: number | undefined): string {
  if (value === undefined) return 'cut off';
  return Number.isFinite(value) ? figure(value, Math.abs(value) >= 1000 ? 0 : 3) : '-';
}

const MEASURE_WORDS: { readonly [Name in CampaignSummary['measures'][number]['measure']]: string } = {
  leastMargin: 'least margin, plumb line inside the footprint',
  strokeUsed: 'share of a stroke used, largest',
  peakLoad: 'axial load of a leg, largest',
  peakAcceleration: 'acceleration of the center of mass, largest',
  clearance: 'hull above the ground, least',
  slide: 'way that a foot slides, largest',
  restTiltDeg: 'tilt at rest',
};

/** 'normal, mean 0, deviation 1': every number that the file gives. */
function distributionWords(distribution: object): string {
  const { kind, ...rest } = Object.fromEntries(Object.entries(distribution));
  const numbers = Object.entries(rest).map(
    ([name, value]) => `${name} ${typeof value === 'number' ? value : JSON.stringify(value)}`,
  );
  return [String(kind), ...numbers].join(', ');
}

function isInput(name: string): name is CampaignInput {
  return name in INPUT_FACTS;
}

function inputWords(input: string): string {
  return isInput(input) ? INPUT_FACTS[input].words : input;
}

function unitWords(input: CampaignInput): string {
  const { unit } = INPUT_FACTS[input];
  return unit === '-' ? '' : unit;
}

function unitOf(input: string): string {
  return isInput(input) ? INPUT_FACTS[input].unit : '-';
}

/** Names of inputs are long [px]. */
const NAME_ROOM = 210;

/** Stack-up of the margin, and what drives it. */
export function driverPart(_: BoardQuestion, { stackUp, summary }: BoardFindings, sheet: Sheet): string {
  const drivers = summary.drivers.map(({ input, correlation }) => ({
    name: INPUT_FACTS[input].words,
    value: Number.isFinite(correlation) ? correlation : undefined,
    note: Number.isFinite(correlation) ? figure(correlation, 2) : 'none',
  }));
  return [
    ...stackFigure(stackUp, sheet),
    sheet.figure(
      barPlot({
        label: 'What drives the margin',
        axis: 'rank correlation with the least margin [-]',
        bars: drivers,
        nameRoom: NAME_ROOM,
      }),
      `Rank correlation of each drawn input with the least margin over ${summary.done} arrivals; below 0: more of it leaves less margin. Near 0 either way is chance.`,
    ),
  ].join('\n');
}

function stackFigure(stackUp: BoardFindings['stackUp'], sheet: Sheet): readonly string[] {
  const { nominalLimit, worstMargin, rootSumSquare } = stackUp ?? {};
  if (stackUp === undefined || nominalLimit === undefined || worstMargin === undefined || rootSumSquare === undefined)
    return [paragraph('With every input at its middle it tips at no speed looked at: there is no stack-up.')];
  const { speed, speedTolerance, azimuths, contributions } = stackUp;
  const bars = contributions.map(({ input, end, loss }) => ({
    name: `${INPUT_FACTS[input].words} ${drawnFigure(end)} ${unitWords(input)}`,
    value: loss,
    note: `${figure(loss, 2)} m/s`,
  }));
  return [
    paragraph(
      `Stack-up by simulation, straight downhill, the least of ${azimuths} directions: margin ${figure(nominalLimit - speed, 2)} m/s with every input at its middle; ${figure(rootSumSquare, 2)} m/s by the root of the sum of squares; ${figure(worstMargin, 2)} m/s with every input at its worse end together. Speed ${figure(speed, 2)} +- ${figure(speedTolerance, 2)} m/s. A margin below 0 tips.`,
    ),
    ...(bars.length === 0
      ? []
      : [
          sheet.figure(
            barPlot({
              label: 'What each spread takes from the tip limit',
              axis: 'tip limit lost [m/s]',
              bars,
              nameRoom: NAME_ROOM,
            }),
            'What each input alone takes from the tip limit at its worse end (three deviations).',
          ),
        ]),
  ];
}

/** Trades of every dimension. */
export function tradePart({ asked }: BoardQuestion, { trades }: BoardFindings, sheet: Sheet): string {
  const bought = whatBuysMost(trades);
  return [
    list(whatBuysLines(trades)),
    sheet.figure(
      tradeDrawing(trades, asked.horizontalSpeed),
      `Limit as each dimension alone changes, everything else as its rule says; dashed blue: the speed of the arrival. ${LIMIT_RULE}`,
    ),
    sheet.table({
      caption: `The best value tried of each dimension. ${MASS_RULE}`,
      columns: [
        { heading: 'dimension' },
        RIGHT('now'),
        RIGHT('best tried'),
        RIGHT('gain [m/s]'),
        RIGHT('mass [kg]'),
        RIGHT('gain for each kg [mm/s]'),
      ],
      rows: trades.map(({ field, present }) => {
        const best = bought.find((one) => one.field === field);
        const name = [SHAPE_FACTS[field].words, valueWords(field, present)];
        if (best === undefined) return [...name, 'none gains', '-', '-', '-'];
        const { value, gain, added, perKilogram } = best;
        const each = perKilogram === undefined ? '-' : figure(1000 * perKilogram, 2);
        return [...name, valueWords(field, value), figure(gain, 2), `${added > 0 ? '+' : ''}${figure(added, 0)}`, each];
      }),
    }),
  ].join('\n');
}
