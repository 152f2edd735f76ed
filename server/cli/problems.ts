import { formatProblem, type FieldProblem, type Result } from '../../engine/result.ts';
import { oneLine, UsageError } from './usageError.ts';

/** Problems shown in full; the rest of a file that is wrong throughout are only counted. */
const MOST_SHOWN = 8;

/** What was read, or one line with everything that is wrong with it, up to MOST_SHOWN. */
export function accepted<Value>(shown: string, read: Result<Value, readonly FieldProblem[]>): Value {
  if (read.ok) return read.value;
  const shownProblems = read.error.slice(0, MOST_SHOWN).map((problem) => oneLine(formatProblem(problem), 300));
  const others = read.error.length - shownProblems.length;
  const more = others === 0 ? '' : ` (and ${others} more)`;
  throw new UsageError(`${oneLine(shown, 80)}: ${shownProblems.join('; ') || 'refused'}${more}`);
}
