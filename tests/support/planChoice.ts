import { formatProblem } from '../../engine/result.ts';
import { PLAN_FORMAT, type PlanChoice, type TablePlan } from '../../engine/table/index.ts';
import { layPlan } from '../../levels/index.ts';

/** A choice with everything that is not said as in the first landing. */
export function choiceOf(said: Partial<PlanChoice>): PlanChoice {
  return {
    format: PLAN_FORMAT,
    lander: 'trivet',
    site: 'saddlers-bench',
    world: 'moon',
    seed: 1,
    start: 'high',
    mode: 'by hand',
    pace: 1,
    sensorTrouble: 'none',
    ...said,
  };
}

/** A choice that is expected to be laid out. */
export function laid(said: Partial<PlanChoice>): TablePlan {
  const plan = layPlan(choiceOf(said));
  if (!plan.ok) throw new Error(plan.error.map(formatProblem).join('; '));
  return plan.value;
}
