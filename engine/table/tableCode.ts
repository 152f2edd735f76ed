import { accept, refuse, type Result } from '../result.ts';
import type { Refusal } from './tableTypes.ts';

/**
 * Letters of a table code: consonants only, so that no word is spelled, and none that is easily taken for another.
 * [RFC8628] section 6.1, the base-20 character set for user codes.
 */
export const TABLE_CODE_ALPHABET = 'BCDFGHJKLMNPQRSTVWXZ';

/** Letters in a code; 20 to the power of 6 is 64 million codes. */
export const TABLE_CODE_LENGTH = 6;

const WHOLE_CODE = new RegExp(`^[${TABLE_CODE_ALPHABET}]{${TABLE_CODE_LENGTH}}$`, 'u');

/** The code as typed by a person: any letter case, with or without spaces, hyphens or dots between. */
export function parseTableCode(text: string): Result<string, Refusal> {
  const code = text.replaceAll(/[\s.\-\u2010-\u2015]/gu, '').toUpperCase();
  if (WHOLE_CODE.test(code)) return accept(code);
  return refuse({
    code: 'table/code',
    reason: `A table code has ${TABLE_CODE_LENGTH} consonants, such as HKT VRQ.`,
  });
}

/** As people read it: two groups of three, such as 'HKT VRQ'. */
export function formatTableCode(code: string): string {
  return `${code.slice(0, 3)} ${code.slice(3)}`;
}
