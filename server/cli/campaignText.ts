import { figure, lowerFigure, upperFigure } from '../../engine/figures.ts';
import type {
  Campaign,
  CampaignSummary,
  FactorShares,
  Interval,
  MeasureSummary,
} from '../../engine/dispersion/index.ts';
import { stackLines, type CampaignStacks } from './campaignStacks.ts';
import { describeLeg, drawnFigure, givenInputs } from './campaignRows.ts';
import { requirementText } from './requirementText.ts';
import { textTable, type Column } from './textTable.ts';

const LEFT = (heading: string): Column => ({ heading, align: 'left' });
const RIGHT = (heading: string): Column => ({ heading, align: 'right' });

interface CampaignExtras {
  readonly shares: readonly FactorShares[] | undefined;
  /** Asked for, and not there: they need every one of their runs. */
  readonly areSharesMissing: boolean;
  readonly stack: CampaignStacks | undefined;
}

/** A campaign for people. */
export function campaignText(
  word: string,
  campaign: Campaign,
  summary: CampaignSummary,
  { shares, stack, areSharesMissing }: CampaignExtras,
): string {
  const { asked, done, isPartial, independent } = summary;
  const state = isPartial ? `PARTIAL: stopped after ${done} of ${asked} touchdowns` : `${done} touchdowns`;
  const { method, seed, gravity, title } = campaign;
  return [
    `${title} (${word}): ${campaign.lander.name} at ${figure(gravity, 3)} m/s^2.`,
    `${state}, method ${method}, seed ${seed}. Intervals: Wilson, 95 %${independent ? '' : '; they take the runs as independent draws, which these are not'}.`,
    '',
    outcomeTable(summary),
    ...(summary.requirement === undefined ? [] : ['', requirementText(summary.requirement, isPartial)]),
    '',
    measureTable(summary.measures),
    ...measureNotes(summary),
    '',
    driverTable(summary, shares),
    ...(areSharesMissing ? ['', 'PARTIAL: stopped before the shares of variance were done.'] : []),
    ...(stack === undefined ? [] : ['', ...stackLines(stack)]),
    '',
    'Worst cases; --case <index>, added to the same command line, runs one of them alone',
    worstTable(campaign, summary),
  ].join('\n');
}

function outcomeTable({ outcomes }: CampaignSummary): string {
  return textTable(
    [LEFT('outcome'), RIGHT('count'), RIGHT('share [-]'), RIGHT('from'), RIGHT('to')],
    outcomes.map(({ outcome, count, fraction, wilson95 }) => [
      outcome,
      String(count),
      figure(fraction, 4),
      ...ends(wilson95),
    ]),
  );
}

function ends({ low, high }: Interval): readonly string[] {
  return [lowerFigure(low, 4), upperFigure(high, 4)];
}

function measureTable(measures: readonly MeasureSummary[]): string {
  return textTable(
    [
      LEFT('measure'),
      LEFT('unit'),
      RIGHT('least'),
      RIGHT('1 %'),
      RIGHT('median'),
      RIGHT('99 %'),
      RIGHT('greatest'),
      RIGHT('99 % of all, confidence 95 %'),
    ],
    measures.map((summary) => {
      const { measure, unit, least, quantiles, greatest } = summary;
      const at = (share: number): number | undefined => quantiles.find((quantile) => quantile.share === share)?.value;
      const values = [least, at(0.01), at(0.5), at(0.99), greatest];
      return [
        measure,
        unit,
        ...values.map((value) => (value === undefined ? 'cut off' : cell(value))),
        boundWords(summary),
      ];
    }),
  );
}

/** Rounded to its own side; where it falls among cases that were cut off, all that is known is that it lies beyond the rest. */
function boundWords({ adverse, bound, worstKnown }: MeasureSummary): string {
  if (bound === undefined) return 'too few runs';
  const { value } = bound;
  if (value === undefined) return worstKnown === undefined ? 'cut off' : `${cell(worstKnown)} or worse: cut off`;
  if (!Number.isFinite(value)) return '-';
  const decimals = decimalsOf(value);
  return adverse === 'low' ? `>= ${lowerFigure(value, decimals)}` : `<= ${upperFigure(value, decimals)}`;
}

function measureNotes({ measures, unsettled }: CampaignSummary): readonly string[] {
  const cutOff = measures[0]?.cutOff ?? 0;
  const { cases, returns } = unsettled;
  return [
    ...(cutOff === 0
      ? []
      : [
          `Cut off: ${cutOff} tipped or timed out. What they measured ends at the verdict, so they rank as worst in every row, without a value.`,
        ]),
    ...(cases === 0
      ? []
      : [`Accuracy: in ${cases} of them the force of a leg did not settle (${returns} times); do not rely on those.`]),
  ];
}

/** '-' for the clearance of a lander without hull points. */
function cell(value: number): string {
  return Number.isFinite(value) ? figure(value, decimalsOf(value)) : '-';
}

/** Three for small figures, none for large ones. */
function decimalsOf(value: number): number {
  return Math.abs(value) >= 1000 ? 0 : 3;
}

function driverTable({ drivers }: CampaignSummary, shares: readonly FactorShares[] | undefined): string {
  const ranks = textTable(
    [LEFT('input'), RIGHT('rank correlation with the least margin [-]')],
    drivers.map(({ input, correlation }) => [input, figure(correlation, 3)]),
  );
  if (shares === undefined) return ranks;
  const table = textTable(
    [LEFT('factor'), RIGHT('share of the variance of the margin, alone [-]'), RIGHT('with its interactions [-]')],
    shares.map(({ name, leastMargin }) => [name, figure(leastMargin?.first, 3), figure(leastMargin?.total, 3)]),
  );
  return `${ranks}\n\n${table}`;
}

/** What was drawn for each, a column an input that varies; gear where it does. */
function worstTable(campaign: Campaign, { worst }: CampaignSummary): string {
  const inputs = givenInputs(campaign).filter((input) => campaign.inputs[input]?.kind !== 'constant');
  const hasGear = worst.some(({ gear }) => gear.length > 0);
  return textTable(
    [
      RIGHT('index'),
      LEFT('outcome'),
      RIGHT('least margin to verdict [m]'),
      ...inputs.map(RIGHT),
      ...(hasGear ? [LEFT('gear')] : []),
    ],
    worst.map(({ index, outcome, leastMargin, values, gear }) => [
      String(index),
      outcome,
      figure(leastMargin, 3),
      ...inputs.map((input) => drawnFigure(values[input])),
      gear.map(describeLeg).join(', '),
    ]),
  );
}
