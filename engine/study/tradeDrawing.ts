import { figure } from '../figures.ts';
import { cellPlot, linePlot, withKey, type Cell, type KeyEntry, type LineSeries, type Plot } from '../plot/index.ts';
import { SHAPE_FACTS } from './reshape.ts';
import type { Trade, TradePoint } from './trade.ts';
import type { TradeGrid } from './tradeGrid.ts';
import { axisOf } from './tradeWords.ts';

const STROKES: readonly LineSeries['stroke'][] = [
  { ink: 'ink', width: 2 },
  { ink: 'blue', width: 2 },
  { ink: 'ink', width: 1.6, dash: 'dashed' },
  { ink: 'blue', width: 1.6, dash: 'dashed' },
  { ink: 'pencil', width: 1.6, dash: 'chain' },
  { ink: 'pencil', width: 1.8, dash: 'dotted' },
  { ink: 'pencil', width: 1.6 },
];

/** How the curve of the trade at this place in the list is drawn. */
export function tradeStroke(place: number): LineSeries['stroke'] {
  return STROKES[place % STROKES.length]!;
}

const SAID = { label: 'Limit as one dimension changes', y: 'limit [m/s]', level: 'this arrival' } as const;

/** Limits, tipping or a leg used up, as each dimension alone changes, over its share of what it is; one alone over its own values. */
export function tradeDrawing(trades: readonly Trade[], speed: number): Plot {
  const [only] = trades;
  const level = { y: Math.abs(speed), words: SAID.level };
  if (trades.length === 1 && only !== undefined) {
    const { field, present, points } = only;
    return linePlot({
      label: SAID.label,
      x: axisOf(field),
      y: SAID.y,
      level,
      upright: { x: present, words: 'as it is' },
      series: [
        curveOf(
          only,
          points.map(({ value, limit }) => ({ x: value, y: limit })),
        ),
      ],
    });
  }
  const plot = linePlot({
    label: SAID.label,
    x: 'share of what it is [%]',
    y: SAID.y,
    height: 300,
    level,
    series: trades.map((trade, i) =>
      curveOf(
        trade,
        trade.points.map(({ value, limit }) => ({
          x: trade.present === 0 ? 100 : (100 * value) / trade.present,
          y: limit,
        })),
        i,
      ),
    ),
  });
  return withKey(
    plot,
    trades.map(({ field }, i): KeyEntry => ({ name: SHAPE_FACTS[field].words, mark: tradeStroke(i) })),
  );
}

function curveOf({ field }: Trade, points: LineSeries['points'], place = 0): LineSeries {
  return { name: field, stroke: tradeStroke(place), dotted: true, points };
}

/** Two dimensions against each other: the limit of each pair in its cell, the mass below. */
export function gridDrawing({ vary, against, values, againstValues, present, points }: TradeGrid, speed: number): Plot {
  return cellPlot({
    label: `Limit [m/s] as ${SHAPE_FACTS[vary].words} and ${SHAPE_FACTS[against].words} change`,
    x: { name: axisOf(vary), ticks: values.map(tick), present: values.indexOf(present[vary]) },
    y: { name: axisOf(against), ticks: againstValues.map(tick), present: againstValues.indexOf(present[against]) },
    cells: points.map((row) => row.map((point) => point && cellOf(point, Math.abs(speed)))),
  });
}

function tick(value: number): string {
  return String(Number(value.toPrecision(4)));
}

/** What the cells of the drawing are, for the text below it. */
export const GRID_KEY =
  'In each cell the limit [m/s], the darker the higher, and the mass; framed: the lander as it is; struck through: below the speed of the arrival; none: no such lander; no limit: it tips at no speed looked at.';

function cellOf({ limit, mass }: TradePoint, speed: number): Cell {
  if (mass === undefined) return { value: undefined, text: 'none' };
  const under = `${figure(mass, 0)} kg`;
  if (limit === undefined) return { value: undefined, text: 'no limit', under };
  return { value: limit, text: figure(limit, 2), under, isStruck: limit < speed };
}
