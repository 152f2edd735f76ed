import { circle, line, polyline, words, type Plot, type Point, type Stroke } from './markup.ts';
import { axes, linearScale, roundUp } from './scale.ts';

export interface LineSeries {
  readonly name: string;
  readonly stroke: Stroke;
  /** undefined: no value there; the curve breaks. */
  readonly points: readonly { readonly x: number; readonly y: number | undefined }[];
  /** Shows each point as a dot. */
  readonly dotted?: boolean;
}

interface LineQuestion {
  readonly label: string;
  readonly x: string;
  readonly y: string;
  readonly series: readonly LineSeries[];
  /** A value of y to hold the curves against. */
  readonly level?: { readonly y: number; readonly words: string };
  /** A value of x at which something is. */
  readonly upright?: { readonly x: number; readonly words: string };
  /** [px] */
  readonly width?: number;
  readonly height?: number;
}

const WIDTH = 566;

export function linePlot({ label, x, y, series, level, upright, width = WIDTH, height = 250 }: LineQuestion): Plot {
  const field = { left: 62, right: width - 18, top: 16, bottom: height - 46 };
  const all = series.flatMap(({ points }) => points);
  const xs = [...all.map((point) => point.x), ...(upright === undefined ? [] : [upright.x])];
  const ys = [...all.flatMap((point) => point.y ?? []), ...(level === undefined ? [] : [level.y])];
  const least = Math.min(0, ...ys);
  const across = linearScale(spanOf(xs), [field.left, field.right], width / 80);
  const up = linearScale(
    [least < 0 ? -roundUp(-least, 3) : 0, roundUp(Math.max(0, ...ys), 4)],
    [field.bottom, field.top],
    4,
  );
  const markup = [
    axes(field, across, up, { x, y }),
    level === undefined
      ? ''
      : line(field.left, up.at(level.y), field.right, up.at(level.y), { ink: 'blue', dash: 'dashed' }) +
        words(level.words, field.right - 4, up.at(level.y) - 5, {
          size: 12,
          ink: 'blue',
          align: 'right',
          halo: 'card',
        }),
    upright === undefined
      ? ''
      : line(across.at(upright.x), field.top, across.at(upright.x), field.bottom, { ink: 'blue', dash: 'dotted' }) +
        words(upright.words, across.at(upright.x) + 5, field.top + 12, { size: 12, ink: 'blue', halo: 'card' }),
    ...series.map((one) => drawSeries(one, (px, py) => [across.at(px), up.at(py)])),
  ].join('');
  return { width, height, markup, label };
}

/** A single value has room round it; without any, an empty sheet runs from 0 to 1. */
function spanOf(values: readonly number[]): readonly [number, number] {
  if (values.length === 0) return [0, 1];
  const [from, to] = [Math.min(...values), Math.max(...values)];
  return to > from ? [from, to] : [from - 1, from + 1];
}

function drawSeries({ points, stroke, dotted = false }: LineSeries, at: (x: number, y: number) => Point): string {
  const parts: Point[][] = [[]];
  for (const { x, y } of points) {
    if (y === undefined) parts.push([]);
    else parts.at(-1)!.push(at(x, y));
  }
  const curves = parts.map((part) => polyline(part, stroke));
  const dots = dotted ? parts.flat().map(([x, y]) => circle(x, y, 2.6, { ink: stroke.ink }, 'card')) : [];
  return [...curves, ...dots].join('');
}
