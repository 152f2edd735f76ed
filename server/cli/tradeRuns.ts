import {
  SHAPE_FIELDS,
  shapeOf,
  tradeSteps,
  type Reshaping,
  type ShapeField,
  type StudyCase,
  type Trade,
  type TradePoint,
} from '../../engine/study/index.ts';
import type { LongWork } from '../workers/pool.ts';
import { createStudyList, type StudyList } from '../workers/runStudies.ts';

/** Asks for every lander of these trades; the lander as it is stands in each, and is simulated once. */
export function askTrades(
  studies: StudyList,
  asked: StudyCase,
  fields: readonly ShapeField[],
  values?: readonly number[],
): () => readonly Trade[] {
  const now = shapeOf(asked.lander);
  const present = studies.ask('trade', { asked, shape: {} });
  const found = fields.map((field) => ({
    field,
    steps: tradeSteps(asked, field, values).map(({ value, shape }) => ({
      value,
      point: value === now[field] ? present : studies.ask('trade', { asked, shape }),
    })),
  }));
  return () =>
    found.map(({ field, steps }) => ({
      field,
      present: now[field],
      points: steps.map(({ value, point }) => ({ value, ...point() })),
    }));
}

/** One dimension at a time, on worker threads; undefined when it was aborted. */
export async function findTrades(
  asked: StudyCase,
  fields: readonly ShapeField[],
  values: readonly number[] | undefined,
  work: LongWork,
): Promise<readonly Trade[] | undefined> {
  const studies = createStudyList();
  const trades = askTrades(studies, asked, fields, values);
  return (await studies.run(work)) ? trades() : undefined;
}

/** Two dimensions against each other. */
export interface TradeGrid {
  readonly vary: ShapeField;
  readonly against: ShapeField;
  readonly values: readonly number[];
  readonly againstValues: readonly number[];
  readonly present: ReturnType<typeof shapeOf>;
  /** A row for each value of the second, a point for each of the first. */
  readonly points: readonly (readonly TradePoint[])[];
}

export async function findGrid(
  asked: StudyCase,
  {
    vary,
    against,
    ...given
  }: {
    readonly vary: ShapeField;
    readonly against: ShapeField;
    readonly values: readonly number[] | undefined;
    readonly againstValues: readonly number[] | undefined;
  },
  work: LongWork,
): Promise<TradeGrid | undefined> {
  const studies = createStudyList();
  const across = tradeSteps(asked, vary, given.values);
  const down = tradeSteps(asked, against, given.againstValues);
  const rows = down.map((second) =>
    across.map((first) => studies.ask('trade', { asked, shape: inOrder({ ...first.shape, ...second.shape }) })),
  );
  if (!(await studies.run(work))) return undefined;
  return {
    vary,
    against,
    values: across.map(({ value }) => value),
    againstValues: down.map(({ value }) => value),
    present: shapeOf(asked.lander),
    points: rows.map((row) => row.map((point) => point())),
  };
}

/** Whichever of two dimensions is named first, they are changed in the one order. */
function inOrder(shape: Reshaping): Reshaping {
  return Object.fromEntries(
    SHAPE_FIELDS.flatMap((field) => (shape[field] === undefined ? [] : [[field, shape[field]]])),
  );
}
