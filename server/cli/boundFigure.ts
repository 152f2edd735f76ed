/** A bound in figures: rounded to its own side, so that what is printed claims no more than what was computed. */

/** Nothing printed is finer than this many decimals. */
const MOST_DECIMALS = 15;

/** A lower bound, rounded down. */
export function lowerFigure(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) <= value ? text : (Number(text) - 10 ** -decimals).toFixed(decimals);
}

/** An upper bound, rounded up. */
export function upperFigure(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) >= value ? text : (Number(text) + 10 ** -decimals).toFixed(decimals);
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
