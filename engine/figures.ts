/** Figures as they are printed: for people, with a stated number of decimals. */

/** A figure for a table; '-' where there is none. */
export function figure(value: number | undefined, decimals: number): string {
  if (value === undefined) return '-';
  const text = value.toFixed(decimals);
  // a small negative rounds to "-0.00", which reads as a sign error
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** An angle in a sentence: one decimal, and none when it is whole. */
export function shortAngle(degrees: number): string {
  return figure(degrees, 1).replace(/\.0$/, '');
}

/* A bound is rounded to its own side, so that what is printed claims no more than what was computed. */

/** Nothing printed is finer than this many decimals. */
const MOST_DECIMALS = 15;

/** The last place of so many decimals: read, not raised to a power, so that it is the same everywhere. */
function unitOf(decimals: number): number {
  return Number(`1e-${decimals}`);
}

/** A lower bound, rounded down. */
export function lowerFigure(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) <= value ? text : (Number(text) - unitOf(decimals)).toFixed(decimals);
}

/** An upper bound, rounded up. */
export function upperFigure(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) >= value ? text : (Number(text) + unitOf(decimals)).toFixed(decimals);
}

/** A lower bound with as many decimals as it takes to show on which side of `wanted` it lies, five or more. */
export function lowerFigureBeside(wanted: number, value: number, decimals = 5): string {
  const text = lowerFigure(value, decimals);
  const isClear = value < wanted || Number(text) >= wanted || decimals >= MOST_DECIMALS;
  return isClear ? text : lowerFigureBeside(wanted, value, decimals + 1);
}

/** The same for an upper bound. */
export function upperFigureBeside(wanted: number, value: number, decimals = 5): string {
  const text = upperFigure(value, decimals);
  const isClear = value >= wanted || Number(text) < wanted || decimals >= MOST_DECIMALS;
  return isClear ? text : upperFigureBeside(wanted, value, decimals + 1);
}
