import express, { type Application, type Request, type Response } from 'express';
import { z } from 'zod';
import { CAUTION } from '../../engine/constants.ts';
import { formatProblem, refuse, type FieldProblem } from '../../engine/result.ts';
import { parseHallDescent, parsePhoneLanding } from '../../levels/index.ts';
import type { VoteRefusal, Votes } from '../votes/index.ts';
import { LARGEST_BODY } from './guard.ts';

const voter = z.string().regex(/^[a-z0-9]{16,40}$/);
const number = z.int().min(1);
const askSchema = z.strictObject({
  question: z.string().min(1).max(160),
  choices: z.array(z.string().min(1).max(30)).min(2).max(6),
  isOpen: z.boolean(),
  descent: z.unknown().optional(),
});
const castSchema = z.strictObject({ number, voter, choice: z.int().min(0).max(5) });
/** From which landing on they are told. */
const lookSchema = z.strictObject({ from: z.coerce.number<string>().int().min(0).default(0) });
const landSchema = z.strictObject({ number, voter, landing: z.unknown() });

type Answer = ReturnType<Votes['open' | 'ask' | 'cast' | 'look']>;

/** The votes of a hall, as JSON; its code, and the presenter's key, come in headers: proxies write addresses down. */
export function serveVotes(app: Application, votes: Votes): void {
  const json = express.json({ limit: LARGEST_BODY, strict: true });
  const post = (path: string, act: (asked: Asked) => Answer) => app.post(`/api/votes${path}`, json, route(act));
  post('', ({ address }) => votes.open(address));
  post('/ask', ({ code, key = '', body, address }) => {
    const asked = askSchema.safeParse(body);
    if (!asked.success) return malformed(asked.error);
    const { descent: named, ...question } = asked.data;
    const descent = named === undefined ? undefined : parseHallDescent(named);
    if (descent?.ok === false) return wrong('descent', descent.error);
    return votes.ask(code, key, { ...question, ...(descent && { descent: descent.value }) }, address);
  });
  post('/cast', ({ code, body, address }) => {
    const vote = castSchema.safeParse(body);
    return vote.success ? votes.cast(code, vote.data, address) : malformed(vote.error);
  });
  post('/begin', ({ code, key = '', address }) => votes.begin(code, key, address));
  post('/land', ({ code, body, address }) => {
    const landed = landSchema.safeParse(body);
    if (!landed.success) return malformed(landed.error);
    const landing = parsePhoneLanding(landed.data.landing);
    if (!landing.ok) return wrong('landing', landing.error);
    return votes.land(code, { ...landed.data, landing: landing.value }, address);
  });
  app.get(
    '/api/votes/seen',
    route(({ code, key, phone, query, address }) => {
      const look = lookSchema.safeParse(query);
      return look.success ? votes.look(code, { key, voter: phone, ...look.data }, address) : malformed(look.error);
    }),
  );
}

function route(act: (asked: Asked) => Answer) {
  return (request: Request, response: Response): void => {
    response.setHeader('Cache-Control', 'no-store');
    // hundreds of phones behind one router look every few seconds: none of them holds a socket in between
    response.setHeader('Connection', 'close');
    const answer = act(readRequest(request));
    if (answer.ok) response.json({ caution: CAUTION, ...answer.value });
    else response.status(answer.error.status).json({ code: answer.error.status, error: answer.error.reason });
  };
}

interface Asked {
  readonly code: string;
  readonly key: string | undefined;
  /** The word of a phone that flies, beside its look. */
  readonly phone: string | undefined;
  readonly query: unknown;
  readonly body: unknown;
  readonly address: string;
}

function readRequest({ headers, query, body }: Request): Asked {
  const header = (name: string) => {
    const value = headers[name];
    return typeof value === 'string' ? value : undefined;
  };
  return {
    code: header('x-vote-code') ?? '',
    key: header('x-vote-key'),
    phone: header('x-vote-phone'),
    query,
    body,
    address: header('x-real-ip') ?? '',
  };
}

/** Field, and what was expected there. */
function malformed({ issues: [first] }: z.ZodError) {
  return refuse<VoteRefusal>({
    status: 400,
    reason: `${first?.path.join('.') ?? ''}: ${first?.message ?? 'not understood'}`,
  });
}

function wrong(field: string, [first]: readonly FieldProblem[]) {
  return refuse<VoteRefusal>({ status: 400, reason: `${field}.${first === undefined ? '' : formatProblem(first)}` });
}
