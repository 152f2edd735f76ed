import { line, tickWords, words, type Box } from './markup.ts';

/** A linear axis between two places of the sheet. */
interface Scale {
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly ticks: readonly number[];
  /** Where a value stands on the sheet [px]. */
  at(value: number): number;
}

/** A scale over exactly `from` to `to`, its ticks at round steps, about so many. */
export function linearScale(
  [from, to]: readonly [number, number],
  [start, end]: readonly [number, number],
  about = 6,
): Scale {
  const step = roundStep((to - from) / about);
  const ticks: number[] = [];
  for (let i = Math.ceil(from / step - 1e-9); i * step <= to + 1e-9 * step; i++) ticks.push(i * step);
  const perUnit = (end - start) / (to - from);
  return { from, to, step, ticks, at: (value) => start + (value - from) * perUnit };
}

/** The least round value at or above what is shown: axes end on a tick. */
export function roundUp(value: number, about = 5): number {
  if (!(value > 0)) return 1;
  const step = roundStep(value / about);
  return Math.ceil(value / step - 1e-9) * step;
}

/** 1, 2 or 5 times a power of ten, at or above a size. */
function roundStep(size: number): number {
  let power = 1;
  while (power > size) power /= 10;
  while (power * 10 <= size) power *= 10;
  return [1, 2, 5, 10].map((factor) => factor * power).find((step) => step >= size * (1 - 1e-9)) ?? 10 * power;
}

/** Frame, grid, figures and names of both axes of a plot that fills this part of its drawing. */
export function axes(field: Box, x: Scale, y: Scale, names: { readonly x: string; readonly y: string }): string {
  const { left, right, top, bottom } = field;
  return [
    ...x.ticks.map((value) => line(x.at(value), top, x.at(value), bottom, { ink: 'grid' })),
    ...y.ticks.map((value) => line(left, y.at(value), right, y.at(value), { ink: 'grid' })),
    line(left, bottom, right, bottom, { ink: 'pencil' }),
    line(left, top, left, bottom, { ink: 'pencil' }),
    ...x.ticks.map((value) =>
      words(tickWords(value, x.step), x.at(value), bottom + 17, { size: 12, ink: 'pencil', align: 'center' }),
    ),
    ...y.ticks.map((value) =>
      words(tickWords(value, y.step), left - 6, y.at(value) + 4, { size: 12, ink: 'pencil', align: 'right' }),
    ),
    words(names.x, (left + right) / 2, bottom + 36, { align: 'center' }),
    words(names.y, left - 42, (top + bottom) / 2, { align: 'center', turn: -90 }),
  ].join('');
}
