import { accept, refuse, type Result } from '../../engine/result.ts';
import type { HallDescent, PhoneLanding } from '../../levels/index.ts';

/** What the phones of a hall are asked, as the server says it; `counts` are told to the presenter alone. */
export interface AskedVote {
  readonly question: string;
  readonly choices: readonly string[];
  readonly isOpen: boolean;
  readonly number: number;
  readonly counts?: readonly number[];
  /** What those fly who say that they do. */
  readonly descent?: HallDescent;
  /** Until the flight starts [ms]; below 0: since then. */
  readonly startsInMs?: number;
  /** Told to the presenter alone, once a flight has begun. */
  readonly flown?: { readonly landings: readonly PhoneLanding[]; readonly inAir: number; readonly left: number };
}

/** What a presenter asks; with a `descent`, who flies it. */
export type Question = Pick<AskedVote, 'question' | 'choices' | 'descent'>;

/** Opens the votes of a hall. */
export interface VoteKey {
  readonly code: string;
  readonly key: string;
}

/** What went wrong, in a sentence of the server's; '' where it does not answer. */
type Answer<Value> = Promise<Result<Value, string>>;

export function openVotes(): Answer<VoteKey> {
  return request('', isKey, { body: {} });
}

export function askVote(as: VoteKey, asked: Question & Pick<AskedVote, 'isOpen'>): Answer<AskedVote> {
  return request('/ask', isAsked, { ...as, body: asked });
}

export function castVote(code: string, vote: { number: number; voter: string; choice: number }): Answer<AskedVote> {
  return request('/cast', isAsked, { code, body: vote });
}

/** All who said that they fly do so. */
export function beginFlight(as: VoteKey): Answer<AskedVote> {
  return request('/begin', isAsked, { ...as, body: {} });
}

export function sayLanding(
  code: string,
  landed: { number: number; voter: string; landing: PhoneLanding },
): Answer<AskedVote> {
  return request('/land', isAsked, { code, body: landed });
}

/** `from`: landings are told from that one on. `voter`: a phone that flies says that it is still here. */
export function lookAtVotes(
  code: string,
  as: { readonly key?: string; readonly from?: number; readonly voter?: string } = {},
): Answer<AskedVote> {
  return request(`/seen?from=${as.from ?? 0}`, isAsked, { code, ...as });
}

async function request<Value>(
  path: string,
  isExpected: (json: unknown) => json is Value,
  { code = '', key, voter, body }: { code?: string; key?: string; voter?: string; body?: object },
): Answer<Value> {
  try {
    const answer = await fetch(`./api/votes${path}`, {
      ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
      headers: {
        'content-type': 'application/json',
        'x-vote-code': code,
        ...(key !== undefined && { 'x-vote-key': key }),
        ...(voter !== undefined && { 'x-vote-phone': voter }),
      },
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
