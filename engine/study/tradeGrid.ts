import type { CsvTable } from '../csv.ts';
import { SHAPE_FIELDS, shapeOf, type Reshaping, type ShapeField } from './reshape.ts';
import type { StudyCase } from './studyCase.ts';
import { gainOver, tradePoint, tradeSteps, type TradeGain, type TradePoint } from './trade.ts';

/** Which two dimensions change together. */
export interface TradeAxes {
  readonly vary: ShapeField;
  readonly against: ShapeField;
  /** Default: values worth trying, as in a trade of one. */
  readonly values?: readonly number[] | undefined;
  readonly againstValues?: readonly number[] | undefined;
}

/** Two dimensions against each other. */
export interface TradeGrid {
  readonly vary: ShapeField;
  readonly against: ShapeField;
  readonly values: readonly number[];
  readonly againstValues: readonly number[];
  /** Of the lander as it is. */
  readonly present: ReturnType<typeof shapeOf>;
  /** A row for each value of the second, a point for each of the first; undefined: not looked at yet. */
  readonly points: readonly (readonly (TradePoint | undefined)[])[];
}

/** One lander of a grid. */
interface GridPlace {
  readonly row: number;
  readonly column: number;
  readonly shape: Reshaping;
}

/** The grid without a point yet, and its landers in the order in which they are worth looking at: the present one, then coarse to fine. */
export function planGrid(
  asked: StudyCase,
  { vary, against, values, againstValues }: TradeAxes,
): { readonly grid: TradeGrid; readonly places: readonly GridPlace[] } {
  const across = tradeSteps(asked, vary, values);
  const down = tradeSteps(asked, against, againstValues);
  const places = down.flatMap((second, row) =>
    across.map((first, column) => ({ row, column, shape: inOrder({ ...first.shape, ...second.shape }) })),
  );
  const rank = ({ row, column, shape }: GridPlace): number =>
    Object.keys(shape).length === 0 ? 0 : 1 + Math.max(fineness(row, down.length), fineness(column, across.length));
  const grid = {
    vary,
    against,
    values: across.map(({ value }) => value),
    againstValues: down.map(({ value }) => value),
    present: shapeOf(asked.lander),
    points: down.map(() => across.map(() => undefined)),
  };
  return { grid, places: places.toSorted((a, b) => rank(a) - rank(b)) };
}

/** 0: one of the coarsest, both ends among them; 1: between those. */
function fineness(place: number, count: number): number {
  const stride = Math.ceil((count - 1) / 2);
  return place % Math.max(1, stride) === 0 || place === count - 1 ? 0 : 1;
}

/** The grid with one more point. */
export function enterPoint(grid: TradeGrid, { row, column }: GridPlace, point: TradePoint): TradeGrid {
  return { ...grid, points: grid.points.map((cells, i) => (i === row ? cells.with(column, point) : cells)) };
}

/** A point a step, coarse to fine. */
export function* tradeGridOf(asked: StudyCase, axes: TradeAxes): Generator<TradeGrid> {
  const plan = planGrid(asked, axes);
  let { grid } = plan;
  for (const place of plan.places) {
    grid = enterPoint(grid, place, tradePoint(asked, place.shape));
    yield grid;
  }
}

/** Whichever of two dimensions is named first, they are changed in the one order. */
function inOrder(shape: Reshaping): Reshaping {
  return Object.fromEntries(
    SHAPE_FIELDS.flatMap((field) => (shape[field] === undefined ? [] : [[field, shape[field]]])),
  );
}

/** One pair that was looked at. */
interface GridPoint {
  readonly value: number;
  readonly second: number;
  readonly point: TradePoint;
  /** Over the lander as it is. */
  readonly gain: TradeGain | undefined;
}

/** Every pair that was looked at, a row each. */
export function gridPoints({ vary, against, values, againstValues, present, points }: TradeGrid): readonly GridPoint[] {
  const [column, row] = [values.indexOf(present[vary]), againstValues.indexOf(present[against])];
  const now = points[row]?.[column];
  return points.flatMap((cells, i) =>
    cells.flatMap((point, j): readonly GridPoint[] =>
      point === undefined
        ? []
        : [{ value: values[j]!, second: againstValues[i]!, point, gain: now && gainOver(now, point) }],
    ),
  );
}

/** The pair with the highest limit, the lightest of such; and the one that gains most for each kilogram. */
export function bestOfGrid(grid: TradeGrid): {
  readonly most: GridPoint | undefined;
  readonly cheapest: GridPoint | undefined;
} {
  const all = gridPoints(grid).filter(({ point }) => point.limit !== undefined);
  const byLimit = all.toSorted((a, b) => b.point.limit! - a.point.limit! || (a.point.mass ?? 0) - (b.point.mass ?? 0));
  const priced = all.filter(({ gain }) => gain?.perKilogram !== undefined && gain.gain > 0);
  const byPrice = priced.toSorted((a, b) => b.gain!.perKilogram! - a.gain!.perKilogram!);
  return { most: byLimit[0], cheapest: byPrice[0] };
}

export function gridTable(grid: TradeGrid): CsvTable {
  const { vary, against } = grid;
  return {
    names: [vary, against, 'mass', 'tip', 'gear', 'limit', 'margin', 'gain', 'addedMass', 'gainPerKilogram', 'note'],
    rows: gridPoints(grid).map(({ value, second, point: { mass, tip, gear, limit, margin, note }, gain }) => [
      value,
      second,
      mass,
      tip,
      gear,
      limit,
      margin,
      gain?.gain,
      gain?.added,
      gain?.perKilogram,
      note,
    ]),
  };
}
