import {
  enterPoint,
  planGrid,
  shapeOf,
  tradeSteps,
  type ShapeField,
  type StudyCase,
  type Trade,
  type TradeAxes,
  type TradeGrid,
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

/** Two against each other. */
export async function findGrid(asked: StudyCase, axes: TradeAxes, work: LongWork): Promise<TradeGrid | undefined> {
  const studies = createStudyList();
  const { grid, places } = planGrid(asked, axes);
  const found = places.map((place) => ({ place, point: studies.ask('trade', { asked, shape: place.shape }) }));
  if (!(await studies.run(work))) return undefined;
  return found.reduce((known, { place, point }) => enterPoint(known, place, point()), grid);
}
