import { accept, refuse, type FieldProblem, type Result } from '../result.ts';
import { checkTouchdown } from './checkTouchdown.ts';
import { prepareTouchdown } from './prepareTouchdown.ts';
import { runTouchdown } from './runTouchdown.ts';
import type { TouchdownCase, TouchdownOptions, TouchdownResult } from './touchdownCase.ts';

/** One touchdown from checked input: what is wrong with it, or the outcome. For many with one lander, prepare once and run each. */
export function simulateTouchdown(
  touchdown: TouchdownCase,
  options: TouchdownOptions = {},
): Result<TouchdownResult, readonly FieldProblem[]> {
  const prepared = prepareTouchdown(touchdown.lander);
  if (!prepared.ok) return prepared;
  const problems = checkTouchdown(touchdown.lander, touchdown, options);
  if (problems.length > 0) return refuse(problems);
  return accept(runTouchdown(prepared.value, touchdown, options));
}
