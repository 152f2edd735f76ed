/** Drawings of the two studies, for engine/touchdown/CONVERGENCE.md. Black on white, fills and dashes instead of colors. */
import type { ArrivalRow, StudyRow } from './stepStudy.ts';
import type { CaughtLimit, TripStudy } from './tripStudy.ts';

type Point = readonly [x: number, y: number];

interface Line {
  readonly points: readonly Point[];
  readonly mark: 'filled' | 'hollow' | 'square' | 'none';
  /** Beside the last point. */
  readonly label?: string;
}

interface Axis {
  readonly from: number;
  readonly to: number;
  readonly log: boolean;
  readonly ticks: readonly (readonly [value: number, text: string])[];
}

interface Panel {
  readonly heading: string;
  readonly xTitle: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly lines: readonly Line[];
}

const [WIDTH, HEIGHT] = [380, 260];
const [LEFT, TOP, BOTTOM, GAP] = [60, 36, 44, 40];

/** Errors over the step: order 2 of a drop, order 1 of whole touchdowns. */
export function stepDrawing(
  drop: readonly StudyRow[],
  landers: readonly { readonly name: string; readonly rows: readonly ArrivalRow[] }[],
): string {
  const column = (i: number): Point[] => drop.map(({ step, values }): Point => [step, values[i]!]);
  const [coarse, fine] = [1 / 512, 1 / 4096];
  const guide = (order: number, at: number): Line => ({
    points: [
      [fine, at],
      [coarse, at * 8 ** order],
    ],
    mark: 'none',
    label: `order ${order}`,
  });
  const xTitle = 'step used [s]';
  const x: Axis = {
    from: 1 / 5793,
    to: 1 / 256,
    log: true,
    ticks: [512, 1024, 2048, 4096].map((n) => [1 / n, `1/${n}`]),
  };
  const marks = ['filled', 'hollow', 'square'] as const;
  return sheet([
    {
      heading: 'Stroke of a drop, relative error: undamped (filled), damped (hollow)',
      xTitle,
      x,
      y: errorAxis(3e-6, 1e-2),
      lines: [guide(2, 2e-5), { points: column(0), mark: 'filled' }, { points: column(1), mark: 'hollow' }],
    },
    {
      heading: 'Largest stroke of 200 random touchdowns, mean relative error',
      xTitle,
      x,
      y: errorAxis(3e-5, 1e-2),
      lines: [
        guide(1, 7e-5),
        ...landers.map(({ name, rows }, i): Line => ({
          points: rows.map(({ used, strokeError }): Point => [used, strokeError]),
          mark: marks[i % marks.length]!,
          label: name,
        })),
      ],
    },
  ]);
}

function points(rows: readonly CaughtLimit[], x: 'stiffness' | 'friction'): Point[] {
  return rows.flatMap((row): Point[] => (row.limit === undefined ? [] : [[row[x], row.limit]]));
}

/** Limit of a caught foot over stiffness and over friction, the plastic trip limit dashed. */
export function tripDrawing({ plastic, byStiffness, lessDamped, byFriction }: TripStudy): string {
  const closed = (from: number, to: number): Line => ({
    points: [
      [from, plastic],
      [to, plastic],
    ],
    mark: 'none',
    label: plastic.toFixed(4),
  });
  return sheet([
    {
      heading: 'Limit speed [m/s], friction 10: damping 2 (filled), 1 (hollow)',
      xTitle: 'stiffness of a leg [N/m]',
      x: {
        from: 7e3,
        to: 3e7,
        log: true,
        ticks: [1e4, 1e5, 1e6, 1e7].map((k) => [k, k.toExponential(0).replace('+', '')]),
      },
      y: speedAxis(1.68, 1.8, 0.02),
      lines: [
        closed(7e3, 1e7),
        { points: points(byStiffness, 'stiffness'), mark: 'filled' },
        { points: points(lessDamped, 'stiffness'), mark: 'hollow' },
      ],
    },
    {
      heading: 'Limit speed [m/s], 1e6 N/m, damping 2; none below friction 0.75',
      xTitle: 'friction [-]',
      x: {
        from: 0.7,
        to: 16,
        log: true,
        ticks: [0.75, 1, 1.5, 2, 3, 5, 10].map((mu) => [mu, `${mu}`]),
      },
      y: speedAxis(1.6, 3, 0.2),
      lines: [closed(0.7, 10), { points: points(byFriction, 'friction'), mark: 'filled' }],
    },
  ]);
}

function sheet(panels: readonly Panel[]): string {
  const width = panels.length * (LEFT + WIDTH + GAP);
  const height = TOP + HEIGHT + BOTTOM;
  const drawn = panels.map((panel, i) => drawPanel(panel, LEFT + i * (LEFT + WIDTH + GAP)));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12">`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...drawn,
    '</svg>\n',
  ].join('\n');
}

function errorAxis(from: number, to: number): Axis {
  const ticks = [1e-5, 1e-4, 1e-3, 1e-2].filter((value) => value >= from && value <= to);
  return { from, to, log: true, ticks: ticks.map((value) => [value, value.toExponential(0)]) };
}

function speedAxis(from: number, to: number, every: number): Axis {
  const ticks = Array.from({ length: Math.round((to - from) / every) + 1 }, (_, i) => from + i * every);
  return { from, to, log: false, ticks: ticks.map((value) => [value, value.toFixed(every < 0.1 ? 2 : 1)]) };
}

/** Where a value stands along an axis, 0 to 1. */
function place(axis: Axis, value: number): number {
  const scale = axis.log ? Math.log10 : (v: number): number => v;
  return (scale(value) - scale(axis.from)) / (scale(axis.to) - scale(axis.from));
}

function drawPanel({ heading, xTitle, x, y, lines }: Panel, left: number): string {
  const atX = (value: number): string => (left + WIDTH * place(x, value)).toFixed(1);
  const atY = (value: number): string => (TOP + HEIGHT * (1 - place(y, value))).toFixed(1);
  const low = TOP + HEIGHT;
  return [
    `<g><text x="${left}" y="${TOP - 12}">${heading}</text>`,
    `<rect x="${left}" y="${TOP}" width="${WIDTH}" height="${HEIGHT}" fill="none" stroke="#888"/>`,
    ...x.ticks.map(
      ([value, text]) =>
        `<path d="M${atX(value)} ${low}v-5" stroke="#888"/><text x="${atX(value)}" y="${low + 16}" text-anchor="middle">${text}</text>`,
    ),
    ...y.ticks.map(
      ([value, text]) =>
        `<path d="M${left} ${atY(value)}h5" stroke="#888"/><text x="${left - 6}" y="${atY(value)}" dy="4" text-anchor="end">${text}</text>`,
    ),
    `<text x="${left + WIDTH / 2}" y="${low + 36}" text-anchor="middle">${xTitle}</text>`,
    ...lines.map((line) => drawLine(line, atX, atY)),
    '</g>',
  ].join('\n');
}

function drawLine(
  { points, mark, label }: Line,
  atX: (value: number) => string,
  atY: (value: number) => string,
): string {
  const path = points.map(([a, b]) => `${atX(a)},${atY(b)}`).join(' ');
  const dash = mark === 'none' ? ' stroke-dasharray="6 4"' : '';
  const marks = points.map(([a, b]) => drawMark(mark, Number(atX(a)), Number(atY(b))));
  const [a, b] = points.reduce((rightmost, point) => (point[0] > rightmost[0] ? point : rightmost));
  const text = label === undefined ? '' : `<text x="${atX(a)}" y="${atY(b)}" dx="8" dy="4">${label}</text>`;
  return `<polyline points="${path}" fill="none" stroke="#222"${dash}/>${marks.join('')}${text}`;
}

function drawMark(mark: Line['mark'], x: number, y: number): string {
  if (mark === 'none') return '';
  if (mark === 'square') return `<rect x="${x - 3}" y="${y - 3}" width="6" height="6" fill="#fff" stroke="#222"/>`;
  return `<circle cx="${x}" cy="${y}" r="3" fill="${mark === 'filled' ? '#222' : '#fff'}" stroke="#222"/>`;
}
