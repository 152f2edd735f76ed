import { accept, refuse, type Result } from '../../engine/result.ts';
import type { Refusal } from '../../engine/table/index.ts';
import { JOIN_CODES } from '../../server/messages/closeCodes.ts';

/** What came back for a request, with what it brought. Anything but a plain yes or a reasoned no means that it was not carried out. */
export function readAnswer(answer: unknown): Result<unknown, Refusal> {
  if (typeof answer === 'object' && answer !== null && 'ok' in answer) {
    if (answer.ok === true) return accept('value' in answer ? answer.value : undefined);
    const refusal = 'error' in answer ? readRefusal(answer.error) : undefined;
    if (refusal !== undefined) return refuse(refusal);
  }
  return refuse(NO_ANSWER);
}

export const NO_ANSWER: Refusal = {
  code: 'table/no-answer',
  reason: 'The table could not carry that out. Try again.',
};

export const LINE_DOWN: Refusal = {
  code: 'table/line-down',
  reason: 'The line to the table is down. It is being tried again.',
};

export const NO_SERVER: Refusal = {
  code: 'table/no-server',
  reason: 'The server does not answer. Check the network, then try again.',
};

/** Why a table could not be entered: from an error of the room library, in words for the person. */
export function readJoinRefusal(error: unknown): Refusal {
  const code = typeof error === 'object' && error !== null && 'code' in error ? error.code : undefined;
  const message = error instanceof Error ? error.message : '';
  switch (code) {
    case JOIN_CODES.unknownCode:
      return {
        code: 'table/no-table',
        reason: 'No open table has this code. Check the letters, or ask for them again.',
      };
    case JOIN_CODES.unknownPlace:
      return { code: 'table/no-place', reason: message };
    case JOIN_CODES.malformed:
    case JOIN_CODES.tableFull:
    case JOIN_CODES.notFacilitator:
    case JOIN_CODES.noTableFree:
    case JOIN_CODES.tooMany:
      return { code: 'table/not-joined', reason: message };
    default:
      return NO_SERVER;
  }
}

function readRefusal(value: unknown): Refusal | undefined {
  if (typeof value !== 'object' || value === null || !('code' in value && 'reason' in value)) return undefined;
  const { code, reason } = value;
  if (typeof code !== 'string' || !code.startsWith('table/') || typeof reason !== 'string') return undefined;
  return { code: `table/${code.slice('table/'.length)}`, reason };
}
