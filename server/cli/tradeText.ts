import type { CsvTable } from '../../engine/csv.ts';
import { linePlot, withKey, type KeyEntry, type Plot } from '../../engine/plot/index.ts';
import {
  SHAPE_FACTS,
  tradeDrawing,
  tradeStroke,
  whatBuysMost,
  type Bought,
  type ShapeField,
  type StudyCase,
  type Trade,
} from '../../engine/study/index.ts';
import { figure, textTable } from './textTable.ts';
import type { TradeGrid } from './tradeRuns.ts';

/** What the masses of a trade are: said wherever they stand. */
export const MASS_RULE =
  'Masses of legs: the heavier of a law of strength and one of buckling, both through the mass of the legs as they are; ' +
  'common practice, no source.';

/** What is traded. */
export const LIMIT_RULE =
  'The limit: the least speed at which it tips or a leg is used up, whichever comes first; simulated, least of all directions.';

/** One dimension at a time, for people. */
export function tradeText(setting: string, trades: readonly Trade[]): string {
  return [
    `${setting}.`,
    LIMIT_RULE,
    ...whatBuysLines(trades),
    ...trades.flatMap((trade) => ['', tradeHead(trade), tradeRows(trade)]),
    '',
    MASS_RULE,
  ].join('\n');
}

/** Which dimension buys most, which most for its mass, in a sentence each. */
export function whatBuysLines(trades: readonly Trade[]): readonly string[] {
  const bought = whatBuysMost(trades);
  const [most] = bought;
  if (most === undefined) return ['No change tried raises the limit.'];
  const priced = bought.filter(({ perKilogram }) => perKilogram !== undefined);
  const cheapest = priced.toSorted((a, b) => (b.perKilogram ?? 0) - (a.perKilogram ?? 0))[0];
  return [
    `Most: ${boughtWords(most, trades)}.`,
    ...(cheapest === undefined || cheapest === most
      ? []
      : [`Most for each kilogram: ${boughtWords(cheapest, trades)}.`]),
  ];
}

function boughtWords({ field, value, gain, added, perKilogram }: Bought, trades: readonly Trade[]): string {
  const present = trades.find((trade) => trade.field === field)?.present ?? value;
  const what = `${SHAPE_FACTS[field].words} from ${valueWords(field, present)} to ${valueWords(field, value)} raises the limit by ${figure(gain, 2)} m/s`;
  if (perKilogram === undefined)
    return `${what}, ${added < 0 ? `${figure(-added, 0)} kg lighter` : 'with no mass in this model'}`;
  return `${what} for ${figure(added, 0)} kg, ${figure(1000 * perKilogram, 2)} mm/s for each kilogram`;
}

export function valueWords(field: ShapeField, value: number): string {
  const { unit } = SHAPE_FACTS[field];
  return `${Number(value.toPrecision(4))}${unit === '-' ? '' : ` ${unit}`}`;
}

function tradeHead({ field, present }: Trade): string {
  const { unit, meaning } = SHAPE_FACTS[field];
  return `${field}${unit === '-' ? '' : ` [${unit}]`}, now ${Number(present.toPrecision(4))}: ${meaning}`;
}

function tradeRows({ points, present }: Trade): string {
  return textTable(
    [
      { heading: 'value', align: 'right' },
      { heading: 'mass [kg]', align: 'right' },
      { heading: 'tips above [m/s]', align: 'right' },
      { heading: 'leg used up from [m/s]', align: 'right' },
      { heading: 'limit [m/s]', align: 'right' },
      { heading: 'margin [m/s]', align: 'right' },
      { heading: '', align: 'left' },
    ],
    points.map(({ value, mass, tip, gear, limit, margin, note }) => [
      String(Number(value.toPrecision(4))),
      figure(mass, 0),
      figure(tip, 3),
      figure(gear, 3),
      figure(limit, 3),
      figure(margin, 3),
      [value === present ? 'as it is' : '', note ?? ''].filter((words) => words !== '').join('; '),
    ]),
  );
}

const SAID = {
  label: 'Limit as one dimension changes',
  y: 'limit [m/s]',
  level: 'this arrival',
} as const;

/** Over the share of what each is; one alone over its own values. */
export function tradePlot(trades: readonly Trade[], { horizontalSpeed }: StudyCase): Plot {
  const [only] = trades;
  if (trades.length > 1 || only === undefined) {
    const key = trades.map(({ field }, i): KeyEntry => ({ name: SHAPE_FACTS[field].words, mark: tradeStroke(i) }));
    return withKey(tradeDrawing(trades, horizontalSpeed, { ...SAID, axis: 'share of what it is [%]' }), key);
  }
  const { field, present, points } = only;
  return linePlot({
    label: SAID.label,
    x: axisOf(field),
    y: SAID.y,
    level: { y: Math.abs(horizontalSpeed), words: SAID.level },
    upright: { x: present, words: 'as it is' },
    series: [
      {
        name: field,
        stroke: tradeStroke(0),
        dotted: true,
        points: points.map(({ value, limit }) => ({ x: value, y: limit })),
      },
    ],
  });
}

function axisOf(field: ShapeField): string {
  const { words, unit } = SHAPE_FACTS[field];
  return unit === '-' ? words : `${words} [${unit}]`;
}

/** Two against each other, for people: a grid of least tip limits. */
export function gridText(
  setting: string,
  { vary, against, values, againstValues, present, points }: TradeGrid,
): string {
  const name = (field: ShapeField, value: number): string =>
    `${Number(value.toPrecision(4))}${value === present[field] ? ' *' : ''}`;
  const notes = new Set(points.flat().flatMap(({ note }) => note ?? []));
  return [
    `${setting}.`,
    `Limit [m/s]; across ${axisOf(vary)}, down ${axisOf(against)}; * as it is.`,
    LIMIT_RULE,
    bestWords({ vary, against, values, againstValues, present, points }),
    '',
    textTable(
      [
        { heading: against, align: 'right' },
        ...values.map((value) => ({ heading: name(vary, value), align: 'right' as const })),
      ],
      points.map((row, i) => [name(against, againstValues[i]!), ...row.map(({ limit }) => figure(limit, 3))]),
    ),
    ...(notes.size === 0 ? [] : ['', ...[...notes].map((note) => `- ${note}`)]),
    '',
    MASS_RULE,
  ].join('\n');
}

function bestWords({ vary, against, values, againstValues, points }: TradeGrid): string {
  const all = points.flatMap((row, i) =>
    row.flatMap(({ limit, mass }, j) =>
      limit === undefined || mass === undefined ? [] : [{ limit, mass, value: values[j]!, second: againstValues[i]! }],
    ),
  );
  const best = all.toSorted((a, b) => b.limit - a.limit || a.mass - b.mass)[0];
  if (best === undefined) return 'No lander tried has a limit.';
  const { limit, mass, value, second } = best;
  return `Highest: ${figure(limit, 3)} m/s with ${SHAPE_FACTS[vary].words} ${valueWords(vary, value)} and ${SHAPE_FACTS[against].words} ${valueWords(against, second)}, ${figure(mass, 0)} kg.`;
}

export function gridTable({ vary, against, values, againstValues, points }: TradeGrid): CsvTable {
  return {
    names: [vary, against, 'mass', 'tip', 'gear', 'limit', 'margin', 'note'],
    rows: points.flatMap((row, i) =>
      row.map(({ mass, tip, gear, limit, margin, note }, j) => [
        values[j],
        againstValues[i],
        mass,
        tip,
        gear,
        limit,
        margin,
        note,
      ]),
    ),
  };
}

export function gridPlot({ vary, against, values, againstValues, points }: TradeGrid, asked: StudyCase): Plot {
  const plot = linePlot({
    label: 'Limit as two dimensions change',
    x: axisOf(vary),
    y: SAID.y,
    height: 300,
    level: { y: Math.abs(asked.horizontalSpeed), words: SAID.level },
    series: points.map((row, i) => ({
      name: String(againstValues[i]),
      stroke: tradeStroke(i),
      dotted: true,
      points: row.map(({ limit }, j) => ({ x: values[j]!, y: limit })),
    })),
  });
  const { words } = SHAPE_FACTS[against];
  return withKey(
    plot,
    againstValues.map((value, i) => ({ name: `${words} ${valueWords(against, value)}`, mark: tradeStroke(i) })),
  );
}
