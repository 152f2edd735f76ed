import type { Drill } from '../../engine/drill/index.ts';
import { createProblemList, describe, report } from '../../engine/fieldReader.ts';
import { refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import { PLAN_FORMAT, type PlanChoice, type TablePlan } from '../../engine/table/index.ts';
import { layOut } from '../plans/layOut.ts';

/** The choice that a drill makes; another seed is other ground, other noise and, where it has several, maybe another course. */
export function choiceOfDrill({ id, plan }: Drill, seed: number = plan.seed): PlanChoice {
  return { format: PLAN_FORMAT, ...plan, seed, sensorTrouble: 'none', drill: id };
}

/** What a table plays for a drill: by instruments, over ground that may be another than its map. A choice may differ from the drill in seed, mode and pace alone. */
export function layDrill(
  drill: Drill,
  choice: PlanChoice = choiceOfDrill(drill),
): Result<TablePlan, readonly FieldProblem[]> {
  const list = createProblemList('plan');
  const own = choiceOfDrill(drill);
  for (const path of ['drill', 'lander', 'site', 'world', 'start', 'sensorTrouble'] as const) {
    if (choice[path] === own[path]) continue;
    const expected = `${JSON.stringify(own[path])}, as the drill has it`;
    report(list, 'not-of-the-drill', { path, expected, came: describe(choice[path]) });
  }
  return list.problems.length > 0 ? refuse(list.problems) : layOut(choice, drill);
}
