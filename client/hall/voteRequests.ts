import { accept, refuse, type Result } from '../../engine/result.ts';

/** What the phones of a hall are asked, as the server says it; `counts` are told to the presenter alone. */
export interface AskedVote {
  readonly question: string;
  readonly choices: readonly string[];
  readonly isOpen: boolean;
  readonly number: number;
  readonly counts?: readonly number[];
}

/** Opens the votes of a hall. */
export interface VoteKey {
  readonly code: string;
  readonly key: string;
}

/** What went wrong, in a sentence of the server's; '' where it does not answer. */
type Answer<Value> = Promise<Result<Value, string>>;

export function openVotes(): Answer<VoteKey> {
  return request('', isKey, {});
}

export function askVote(
  { code, key }: VoteKey,
  asked: Pick<AskedVote, 'question' | 'choices' | 'isOpen'>,
): Answer<AskedVote> {
  return request(`/${code}/ask`, isAsked, asked, key);
}

export function castVote(code: string, vote: { number: number; voter: string; choice: number }): Answer<AskedVote> {
  return request(`/${code}/cast`, isAsked, vote);
}

export function lookAtVotes(code: string, key?: string): Answer<AskedVote> {
  return request(`/${code}`, isAsked, undefined, key);
}

async function request<Value>(
  path: string,
  isExpected: (json: unknown) => json is Value,
  body: object | undefined,
  key?: string,
): Answer<Value> {
  try {
    const answer = await fetch(`./api/votes${path}`, {
      ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
      headers: { 'content-type': 'application/json', ...(key === undefined ? {} : { 'x-vote-key': key }) },
    });
    const json: unknown = await answer.json();
    if (answer.ok && isExpected(json)) return accept(json);
    return refuse(isRefused(json) ? json.error : '');
  } catch {
    return refuse('');
  }
}

function isObject(json: unknown): json is Readonly<Record<string, unknown>> {
  return typeof json === 'object' && json !== null;
}

function isKey(json: unknown): json is VoteKey {
  return isObject(json) && typeof json['code'] === 'string' && typeof json['key'] === 'string';
}

function isAsked(json: unknown): json is AskedVote {
  return isObject(json) && typeof json['number'] === 'number' && Array.isArray(json['choices']);
}

function isRefused(json: unknown): json is { readonly error: string } {
  return isObject(json) && typeof json['error'] === 'string';
}
