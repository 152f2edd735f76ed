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

/** Said again while it does not get through and `isWanted`. */
export function castVote(
  code: string,
  vote: { number: number; voter: string; choice: number },
  isWanted: () => boolean,
): Answer<AskedVote> {
  return insist('/cast', { code, body: vote }, isWanted);
}

/** All who said that they fly do so. */
export function beginFlight(as: VoteKey): Answer<AskedVote> {
  return request('/begin', isAsked, { ...as, body: {} });
}

/** Said again while it does not get through and `isWanted`. */
export function sayLanding(
  code: string,
  landed: { number: number; voter: string; landing: PhoneLanding },
  isWanted: () => boolean,
): Answer<AskedVote> {
  return insist('/land', { code, body: landed }, isWanted);
}

/** `from`: landings are told from that one on. `voter`: a phone that flies says that it is still here. */
export function lookAtVotes(
  code: string,
  as: { readonly key?: string; readonly from?: number; readonly voter?: string } = {},
): Answer<AskedVote> {
  return request(`/seen?from=${as.from ?? 0}`, isAsked, { code, ...as });
}

interface Sent {
  readonly code?: string;
  readonly key?: string;
  readonly voter?: string;
  readonly body?: object;
}

/** Until it is said again, and how often at most: many phones behind one router may be too many for a moment. */
const AGAIN_MS = 2000;
const MOST_TRIES = 30;

/** What a phone says counts once, however often it is said. */
async function insist(path: string, sent: Sent, isWanted: () => boolean): Answer<AskedVote> {
  for (let tries = 1; ; tries++) {
    const { status, answer } = await ask(path, isAsked, sent);
    const isTaken = status !== 0 && status !== 429 && status < 500;
    if (isTaken || tries === MOST_TRIES || !isWanted()) return answer;
    await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
    if (!isWanted()) return answer;
  }
}

async function request<Value>(path: string, isExpected: (json: unknown) => json is Value, sent: Sent): Answer<Value> {
  return (await ask(path, isExpected, sent)).answer;
}

/** `status`: 0 where there is no answer. */
async function ask<Value>(
  path: string,
  isExpected: (json: unknown) => json is Value,
  { code = '', key, voter, body }: Sent,
): Promise<{ readonly status: number; readonly answer: Result<Value, string> }> {
  try {
    const response = await fetch(`./api/votes${path}`, {
      ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
      headers: {
        'content-type': 'application/json',
        'x-vote-code': code,
        ...(key !== undefined && { 'x-vote-key': key }),
        ...(voter !== undefined && { 'x-vote-phone': voter }),
      },
    });
    const { status } = response;
    const json: unknown = await response.json();
    if (response.ok && isExpected(json)) return { status, answer: accept(json) };
    return { status, answer: refuse(isRefused(json) ? json.error : '') };
  } catch {
    return { status: 0, answer: refuse('') };
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
