import { formatProblem } from '../../engine/result.ts';
import { PLAN_FORMAT, type PlanChoice, type TablePlan } from '../../engine/table/index.ts';
import { layOut } from './layOut.ts';

/**
 * The choice behind "Fly a landing": Trivet, high over Saddler's Bench on the Moon, drifting to the right faster than it may touch down.
 * Playable by someone who has never done it: nothing fails, and there is propellant to spare. Left alone it falls over or uses up its legs; with the
 * engine shut down it falls from there, faster than its legs can take.
 */
export function firstChoice(seed: number): PlanChoice {
  return {
    format: PLAN_FORMAT,
    lander: 'trivet',
    site: 'saddlers-bench',
    world: 'moon',
    seed,
    start: 'high',
    mode: 'by hand',
    pace: 1,
    sensorTrouble: 'none',
  };
}

export function firstLanding(seed: number): TablePlan {
  const plan = layOut(firstChoice(seed));
  if (!plan.ok) throw new Error(`The first landing cannot be laid out: ${plan.error.map(formatProblem).join('; ')}`);
  return { ...plan.value, title: 'First landing' };
}
