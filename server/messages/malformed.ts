import type { Refusal } from '../../engine/table/index.ts';

/** A message that is none of ours. `what`: where in it, and what is wrong there. */
export function malformed(what: string): Refusal {
  return { code: 'table/malformed', reason: `The table did not understand that. ${what}` };
}
