import { accept, refuse, type Result } from '../result.ts';
import { hasUnseen } from './plainText.ts';
import type { Refusal } from './tableTypes.ts';

/** [characters] */
export const LONGEST_NAME = 24;

/** What a member is called at the table: plain text on one line, 1 to 24 characters once the ends are trimmed. */
export function parseMemberName(text: string): Result<string, Refusal> {
  const name = text.trim();
  const length = Array.from(name).length;
  if (length === 0) return refuse({ code: 'table/name', reason: 'Give a name, so that the others know who you are.' });
  if (length > LONGEST_NAME) {
    return refuse({ code: 'table/name', reason: `The name has ${length} characters; at most ${LONGEST_NAME} fit.` });
  }
  if (hasUnseen(name)) {
    return refuse({ code: 'table/name', reason: 'The name has characters that cannot be seen; use plain text.' });
  }
  return accept(name);
}
