import { createProblemList, readFields, readText, report, type ProblemList } from '../../engine/fieldReader.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import type { PlanChoice } from '../../engine/table/index.ts';
import { firstChoice } from '../plans/firstLanding.ts';
import { layOut } from '../plans/layOut.ts';
import { parsePlanChoice } from '../plans/parsePlanChoice.ts';
import type { FlightScene, HallDescent } from './hall.ts';
import { LINE } from './ranges.ts';

const DESCENT_FIELDS = ['lander', 'site', 'world', 'start', 'seed'] as const;

/** One descent, flown by every phone. */
export function readFlight(list: ProblemList, value: unknown, path: string): FlightScene | undefined {
  const fields = readFields(list, value, path, ['kind', 'question', 'answer', ...DESCENT_FIELDS]);
  if (fields === undefined) return undefined;
  const question = readText(list, fields.question, `${path}.question`, LINE);
  const answer = readText(list, fields.answer, `${path}.answer`, LINE);
  const named = Object.fromEntries(DESCENT_FIELDS.map((name) => [name, fields[name]]));
  // what is missing has been said above
  const isWhole = Object.values(named).every((word) => word !== undefined);
  const descent = isWhole ? parseHallDescent(named) : undefined;
  if (descent?.ok === false)
    for (const { code, ...problem } of descent.error)
      report(list, code.split('/').at(-1) ?? code, { ...problem, path: `${path}.${problem.path}` });
  if (question === undefined || answer === undefined || descent?.ok !== true) return undefined;
  return { kind: 'flight', question, answer, descent: descent.value };
}

/** What the phones fly, or what is wrong with it: also that it cannot be flown. */
export function parseHallDescent(json: unknown): Result<HallDescent, readonly FieldProblem[]> {
  const list = createProblemList('hall');
  const fields = readFields(list, json, '', DESCENT_FIELDS);
  if (fields === undefined || list.problems.length > 0) return refuse(list.problems);
  const choice = parsePlanChoice({ ...firstChoice(0), ...fields });
  if (!choice.ok) return choice;
  const laid = layOut(choice.value);
  if (!laid.ok) return laid;
  const { lander, site, world, start, seed } = choice.value;
  return accept({ lander, site, world, start, seed });
}

/** The descent as a table plays it: by hand, at true speed, nothing out of order. */
export function choiceOfHall(descent: HallDescent): PlanChoice {
  return { ...firstChoice(descent.seed), ...descent };
}
