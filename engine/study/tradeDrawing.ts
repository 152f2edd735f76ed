import { linePlot, type LineSeries, type Plot } from '../plot/index.ts';
import type { Trade } from './trade.ts';

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

interface TradeWords {
  readonly label: string;
  readonly axis: string;
  readonly y: string;
  /** At the speed of the arrival. */
  readonly level: string;
}

/** Limits, tipping or a leg used up, as each dimension alone changes, over its share of what it is. */
export function tradeDrawing(trades: readonly Trade[], speed: number, { axis, level, ...said }: TradeWords): Plot {
  return linePlot({
    ...said,
    x: axis,
    height: 300,
    level: { y: Math.abs(speed), words: level },
    series: trades.map(({ field, present, points }, i) => ({
      name: field,
      stroke: tradeStroke(i),
      dotted: true,
      points: points.map(({ value, limit }) => ({ x: present === 0 ? 100 : (100 * value) / present, y: limit })),
    })),
  });
}
