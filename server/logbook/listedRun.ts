import { isPlainObject } from '../../engine/fieldReader.ts';
import type { RunSummary } from '../../engine/record/index.ts';
import type { PlanChoice } from '../../engine/table/index.ts';
import type { ListedRun } from '../messages/index.ts';
import type { ShelvedRun } from '../storage/index.ts';

const DAY_MS = 24 * 3600 * 1000;

/** What stands in place of a summary of a record that this engine does not play. */
export const NO_SUMMARY = 'null';

export function listRun(run: ShelvedRun, recordDays: number): ListedRun {
  const { id, code, openedMs, changedMs, isOpen, isKept } = run;
  const { plan } = read(run.header, isHeader);
  const title = plan.drill?.title;
  const summary = run.summary === undefined ? null : read(run.summary, isSummary);
  return {
    id,
    code,
    choice: plan.choice,
    ...(typeof title === 'string' && { drillTitle: title }),
    openedMs,
    isOpen,
    isKept,
    ...(!isKept && !isOpen && { expiresMs: changedMs + recordDays * DAY_MS }),
    isPending: !isOpen && run.summary === undefined,
    ...(!isOpen && summary && { summary }),
  };
}

/** Texts that this server, or one before it, wrote itself. */
function read<Value>(text: string, is: (value: unknown) => value is Value): Value {
  const value: unknown = JSON.parse(text);
  if (is(value)) return value;
  throw new Error('the header or the summary of a run cannot be read');
}

interface Header {
  readonly plan: { readonly choice: PlanChoice; readonly drill?: { readonly title?: unknown } };
}

function isHeader(value: unknown): value is Header {
  return isPlainObject(value) && isPlainObject(value['plan']) && isPlainObject(value['plan']['choice']);
}

function isSummary(value: unknown): value is RunSummary | null {
  return value === null || (isPlainObject(value) && Array.isArray(value['people']));
}
