import { accept, formatProblem, refuse, type Result } from '../../engine/result.ts';
import type { PlanChoice, Refusal } from '../../engine/table/index.ts';
import { layPlan, parsePlanChoice } from '../../levels/index.ts';

/** What a table is to play: read, and laid out once, so that whoever chose it is told what is wrong with it. */
export function parseChoice(json: unknown): Result<PlanChoice, Refusal> {
  const choice = parsePlanChoice(json);
  const laid = choice.ok ? layPlan(choice.value) : choice;
  if (choice.ok && laid.ok) return accept(choice.value);
  const problems = laid.ok ? [] : laid.error;
  const reason = `This landing cannot be laid out. ${problems.map(formatProblem).join('; ')}`;
  return refuse({ code: 'table/plan', reason });
}
