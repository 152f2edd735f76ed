import express, { type Application, type Request, type Response } from 'express';
import { z } from 'zod';
import { CAUTION } from '../../engine/constants.ts';
import type { Votes } from '../votes/index.ts';
import { LARGEST_BODY } from './guard.ts';

const askSchema = z.strictObject({
  question: z.string().min(1).max(160),
  choices: z.array(z.string().min(1).max(30)).min(2).max(6),
  isOpen: z.boolean(),
});
const castSchema = z.strictObject({
  number: z.int().min(1),
  voter: z.string().regex(/^[a-z0-9]{16,40}$/),
  choice: z.int().min(0).max(5),
});

/** The votes of a hall, as JSON; the presenter's key comes in a header. */
export function serveVotes(app: Application, votes: Votes): void {
  const json = express.json({ limit: LARGEST_BODY, strict: true });
  app.post(
    '/api/votes',
    json,
    route(({ address }) => votes.open(address)),
  );
  app.post(
    '/api/votes/:code/ask',
    json,
    route(({ code, key = '', body, address }) => {
      const asked = askSchema.safeParse(body);
      return asked.success ? votes.ask(code, key, asked.data, address) : malformed(asked.error);
    }),
  );
  app.post(
    '/api/votes/:code/cast',
    json,
    route(({ code, body, address }) => {
      const vote = castSchema.safeParse(body);
      return vote.success ? votes.cast(code, vote.data, address) : malformed(vote.error);
    }),
  );
  app.get(
    '/api/votes/:code',
    route(({ code, key, address }) => votes.look(code, key, address)),
  );
}

function route(act: (asked: Asked) => ReturnType<Votes['open' | 'ask' | 'cast' | 'look']>) {
  return (request: Request, response: Response): void => {
    response.setHeader('Cache-Control', 'no-store');
    const answer = act(readRequest(request));
    if (answer.ok) response.json({ caution: CAUTION, ...answer.value });
    else response.status(answer.error.status).json({ code: answer.error.status, error: answer.error.reason });
  };
}

interface Asked {
  readonly code: string;
  readonly key: string | undefined;
  readonly body: unknown;
  readonly address: string;
}

function readRequest(request: Request): Asked {
  const key = request.headers['x-vote-key'];
  const address = request.headers['x-real-ip'];
  return {
    code: String(request.params['code']),
    key: typeof key === 'string' ? key : undefined,
    body: request.body,
    address: typeof address === 'string' ? address : '',
  };
}

/** Field, and what was expected there. */
function malformed({ issues: [first] }: z.ZodError) {
  const reason = `${first?.path.join('.') ?? ''}: ${first?.message ?? 'not understood'}`;
  return { ok: false, error: { status: 400, reason } } as const;
}
