import type { Refusal } from '../table/tableTypes.ts';

/** Why something that was to be said is not taken. */
export function refusal(code: string, reason: string): Refusal {
  return { code: `table/${code}`, reason };
}
