import { formatProblem, type FieldProblem, type Result } from '../../engine/result.ts';
import { oneLine, UsageError } from './usageError.ts';

/** What was read, or one line with the first thing that is wrong with it and how many others there are. */
export function accepted<Value>(shown: string, read: Result<Value, readonly FieldProblem[]>): Value {
  if (read.ok) return read.value;
  const [first, ...others] = read.error;
  const more = others.length === 0 ? '' : ` (and ${others.length} more)`;
  throw new UsageError(`${oneLine(shown, 80)}: ${first === undefined ? 'refused' : formatProblem(first)}${more}`);
}
