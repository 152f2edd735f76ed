import { createProblemList, describe, report } from '../../engine/fieldReader.ts';
import { nearestName } from '../../engine/nearestName.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import type { Drill } from '../../engine/drill/index.ts';
import type { PlanChoice, TablePlan } from '../../engine/table/index.ts';
import { DRILLS, findDrill } from '../drills/findDrill.ts';
import { layDrill } from '../drills/layDrill.ts';
import { parseDrill } from '../drills/parseDrill.ts';
import { layOut } from './layOut.ts';

/**
 * The one place where a choice becomes what a table plays: for a page alone, a server, the command line and a flight that was kept. The same choice gives
 * the same bits. Refuses what cannot be flown: every refusal names the field, what was expected and what came. `recorded` is the drill that a record
 * carries, as its file has it; without it a drill is looked up among those that come with the program.
 */
export function layPlan(choice: PlanChoice, recorded?: unknown): Result<TablePlan, readonly FieldProblem[]> {
  if (choice.drill === undefined) return layOut(choice);
  const drill = recorded === undefined ? lookUp(choice.drill) : parseDrill(recorded);
  return drill.ok ? layDrill(drill.value, choice) : drill;
}

function lookUp(id: string): Result<Drill, readonly FieldProblem[]> {
  const drill = findDrill(id);
  if (drill !== undefined) return accept(drill);
  const list = createProblemList('plan');
  const known = DRILLS.map((each) => each.id);
  const near = nearestName(id, known);
  const expected = `one of ${known.join(', ')}${near === undefined ? '' : ` (did you mean ${near}?)`}`;
  report(list, 'no-such-drill', { path: 'drill', expected, came: describe(id) });
  return refuse(list.problems);
}
