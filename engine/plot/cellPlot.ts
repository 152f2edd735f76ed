import { area, corners, line, polyline, words, type Box, type Plot } from './markup.ts';

/** One cell: its value decides the tone, its words stand in it. */
export interface Cell {
  /** undefined: there is none. */
  readonly value: number | undefined;
  readonly text: string;
  /** Smaller, below. */
  readonly under?: string;
  /** Struck through: what was asked lies beyond it. */
  readonly isStruck?: boolean;
}

interface CellAxis {
  readonly name: string;
  /** One for each row or column, as words. */
  readonly ticks: readonly string[];
  /** Which of them is the present one. */
  readonly present: number;
}

interface CellQuestion {
  readonly label: string;
  readonly x: CellAxis;
  /** From the bottom up. */
  readonly y: CellAxis;
  /** Row by row from the bottom. undefined: not known yet. */
  readonly cells: readonly (readonly (Cell | undefined)[])[];
}

const WIDTH = 640;
const FIELD = { left: 88, right: WIDTH - 12, top: 12 } as const;
const ROW = 42;
/** Of the blue over the card, from the least value to the most [-]. */
const TONE = { least: 0.04, most: 0.42 } as const;

/** Values over two axes as filled cells, one for each pair looked at: nothing between them is made up. */
export function cellPlot({ label, x, y, cells }: CellQuestion): Plot {
  const bottom = FIELD.top + ROW * y.ticks.length;
  const wide = (FIELD.right - FIELD.left) / x.ticks.length;
  const values = cells.flat().flatMap((cell) => cell?.value ?? []);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const tone = (value: number): number =>
    TONE.least + (most > least ? (value - least) / (most - least) : 0.5) * (TONE.most - TONE.least);
  const place = (row: number, column: number): Box => ({
    left: FIELD.left + wide * column,
    right: FIELD.left + wide * (column + 1),
    top: bottom - ROW * (row + 1),
    bottom: bottom - ROW * row,
  });
  const markup = [
    ...cells.flatMap((row, i) => row.map((cell, j) => drawCell(cell, place(i, j), tone))),
    polyline(corners(place(y.present, x.present)), { ink: 'ink', width: 2.6 }, true),
    ...x.ticks.map((tick, j) =>
      words(tick, FIELD.left + wide * (j + 0.5), bottom + 17, {
        size: 12,
        align: 'center',
        bold: j === x.present,
        ink: j === x.present ? 'ink' : 'pencil',
      }),
    ),
    ...y.ticks.map((tick, i) =>
      words(tick, FIELD.left - 7, bottom - ROW * (i + 0.5) + 4, {
        size: 12,
        align: 'right',
        bold: i === y.present,
        ink: i === y.present ? 'ink' : 'pencil',
      }),
    ),
    words(x.name, (FIELD.left + FIELD.right) / 2, bottom + 38, { align: 'center' }),
    words(y.name, 16, (FIELD.top + bottom) / 2, { align: 'center', turn: -90 }),
  ].join('');
  return { width: WIDTH, height: bottom + 48, markup, label };
}

function drawCell(cell: Cell | undefined, box: Box, tone: (value: number) => number): string {
  const [middle, center] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  const frame = polyline(corners(box), { ink: 'faint' }, true);
  if (cell === undefined) return area(corners(box), 'var(--grid)') + frame;
  const { value, text, under, isStruck = false } = cell;
  const filled =
    value === undefined
      ? area(corners(box), 'var(--soil)')
      : area(corners(box), 'var(--blue)', Math.round(100 * tone(value)) / 100);
  return [
    filled,
    frame,
    isStruck ? line(box.left, box.bottom, box.right, box.top, { ink: 'pencil', dash: 'dashed' }) : '',
    words(text, middle, under === undefined ? center + 5 : center - 1, {
      size: 14,
      align: 'center',
      ...(isStruck && { halo: 'card' as const }),
    }),
    under === undefined ? '' : words(under, middle, center + 14, { size: 11, align: 'center' }),
  ].join('');
}
