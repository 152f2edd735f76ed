import { accept, refuse, type Result } from '../../engine/result.ts';
import type { Amendment } from '../../engine/record/index.ts';
import type { ListedRun } from '../../server/messages/index.ts';
import { LOGBOOK } from '../text/logbook.ts';

/** What opens runs of the server. */
export interface Keys {
  readonly runs: readonly string[];
  readonly administrator?: string;
}

interface Listed {
  readonly runs: readonly ListedRun[];
  readonly unknownKeys: readonly string[];
}

/** What is wrong, in a sentence of the server's or of ours. */
type Answer<Value> = Promise<Result<Value, string>>;

export function listRuns(keys: Keys): Answer<Listed> {
  return ask('', keys, isListed);
}

export async function readRun(keys: Keys, id: string): Answer<string> {
  const answer = await ask(`/${id}`, keys, isText);
  return answer.ok ? accept(answer.value.text) : answer;
}

export function keepRun(keys: Keys, id: string, isKept: boolean): Answer<object> {
  return ask(`/${id}/keep`, keys, isAnything, { isKept });
}

export function deleteRun(keys: Keys, id: string): Answer<object> {
  return ask(`/${id}/delete`, keys, isAnything, {});
}

export function forgetName(keys: Keys, id: string, name: string): Answer<object> {
  return ask(`/${id}/forget`, keys, isAnything, { name });
}

export function amendRun(keys: Keys, id: string, command: Amendment): Answer<object> {
  return ask(`/${id}/plan`, keys, isAnything, { command });
}

async function ask<Value>(
  where: string,
  keys: Keys,
  is: (value: object) => value is object & Value,
  body?: object,
): Answer<Value> {
  const headers: Record<string, string> = { 'Kilter-Keys': keys.runs.join(',') };
  // a header takes plain signs alone; no key has others
  if (keys.administrator !== undefined) headers['Kilter-Administrator'] = keys.administrator.replaceAll(/[^!-~]/g, '');
  try {
    const answer = await fetch(`./api/runs${where}`, {
      headers: body === undefined ? headers : { ...headers, 'Content-Type': 'application/json' },
      ...(body !== undefined && { method: 'POST', body: JSON.stringify(body) }),
    });
    const said: unknown = await answer.json();
    if (typeof said !== 'object' || said === null) return refuse(LOGBOOK.noServer);
    if (answer.ok && is(said)) return accept(said);
    return refuse('error' in said && typeof said.error === 'string' ? said.error : LOGBOOK.noServer);
  } catch {
    return refuse(LOGBOOK.noServer);
  }
}

/** What comes is of the server that this page is from. */
function isListed(value: object): value is Listed {
  return 'runs' in value && Array.isArray(value.runs) && 'unknownKeys' in value && Array.isArray(value.unknownKeys);
}

function isText(value: object): value is { readonly text: string } {
  return 'text' in value && typeof value.text === 'string';
}

function isAnything(value: object): value is object {
  return value !== null;
}
