import { figure } from '../../engine/figures.ts';
import {
  axisOf,
  gridLines,
  gridPoints,
  LIMIT_RULE,
  MASS_RULE,
  SHAPE_FACTS,
  whatBuysLines,
  type ShapeField,
  type Trade,
  type TradeGrid,
} from '../../engine/study/index.ts';
import { textTable } from './textTable.ts';

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

/** Two against each other, for people: limits as a grid, then every pair with its mass and what it gains. */
export function gridText(setting: string, grid: TradeGrid): string {
  const { vary, against, values, againstValues, present, points } = grid;
  const name = (field: ShapeField, value: number): string =>
    `${Number(value.toPrecision(4))}${value === present[field] ? ' *' : ''}`;
  const notes = new Set(points.flat().flatMap((point) => point?.note ?? []));
  const across = values.map((value) => ({ heading: name(vary, value), align: 'right' as const }));
  const rows = points.map((row, i) => [
    name(against, againstValues[i]!),
    ...row.map((point) => figure(point?.limit, 3)),
  ]);
  return [
    `${setting}.`,
    `Limit [m/s]; across ${axisOf(vary)}, down ${axisOf(against)}; * as it is.`,
    LIMIT_RULE,
    ...gridLines(grid),
    '',
    textTable([{ heading: against, align: 'right' }, ...across], rows),
    '',
    pairTable(grid),
    ...(notes.size === 0 ? [] : ['', ...[...notes].map((note) => `- ${note}`)]),
    '',
    MASS_RULE,
  ].join('\n');
}

function pairTable(grid: TradeGrid): string {
  const headings = [
    grid.vary,
    grid.against,
    'mass [kg]',
    'limit [m/s]',
    'margin [m/s]',
    'gain [m/s]',
    'for each kg [mm/s]',
  ];
  return textTable(
    headings.map((heading) => ({ heading, align: 'right' })),
    gridPoints(grid).map(({ value, second, point: { mass, limit, margin }, gain }) => [
      String(Number(value.toPrecision(4))),
      String(Number(second.toPrecision(4))),
      figure(mass, 0),
      figure(limit, 3),
      figure(margin, 3),
      figure(gain?.gain, 3),
      figure(gain?.perKilogram === undefined ? undefined : 1000 * gain.perKilogram, 2),
    ]),
  );
}
