import express, { type Application, type Request, type Response } from 'express';
import { z } from 'zod';
import { CAUTION } from '../../engine/constants.ts';
import { isAmendment } from '../../engine/record/index.ts';
import type { Result } from '../../engine/result.ts';
import { MOST_KEYS, type Keys, type Logbook, type LogbookRefusal } from '../logbook/index.ts';
import { parseCommand } from '../messages/index.ts';
import { LARGEST_BODY } from './guard.ts';

const keepSchema = z.strictObject({ isKept: z.boolean() });
const forgetSchema = z.strictObject({ name: z.string().min(1).max(48) });
const planSchema = z.strictObject({ command: z.unknown() });
const deleteSchema = z.strictObject({});

/** Lists and changes the runs of this server, as JSON. Without a logbook everything is refused in words. */
export function serveLogbook(app: Application, logbook: Logbook | undefined): void {
  const route =
    (act: (book: Logbook, keys: Keys, request: Request) => Promise<Result<unknown, Refusal>>) =>
    async (request: Request, response: Response): Promise<void> => {
      response.setHeader('Cache-Control', 'no-store');
      const keys = keysOf(request);
      const answer = logbook === undefined ? NO_LOGBOOK : keys.ok ? await act(logbook, keys.value, request) : keys;
      if (answer.ok) response.json({ caution: CAUTION, ...asObject(answer.value) });
      else response.status(answer.error.status).json({ code: answer.error.status, error: answer.error.reason });
    };
  const json = express.json({ limit: LARGEST_BODY, strict: true });
  app.get(
    '/api/runs',
    route((book, keys) => book.list(keys)),
  );
  app.get(
    '/api/runs/:id',
    route(async (book, keys, request) => {
      const text = await book.text(keys, idOf(request));
      return text.ok ? { ok: true, value: { text: text.value } } : text;
    }),
  );
  app.post('/api/runs/:id/:what', json, route(change));
}

type Refusal = Omit<LogbookRefusal, 'status'> & { readonly status: number };

const NO_LOGBOOK = refusal(404, 'This server keeps no records.');

async function change(book: Logbook, keys: Keys, request: Request): Promise<Result<unknown, Refusal>> {
  const id = idOf(request);
  const body: unknown = request.body;
  switch (String(request.params['what'])) {
    case 'keep': {
      const asked = keepSchema.safeParse(body);
      return asked.success ? book.keep(keys, id, asked.data.isKept) : malformed('{ "isKept": true or false }');
    }
    case 'forget': {
      const asked = forgetSchema.safeParse(body);
      return asked.success ? book.forget(keys, id, asked.data.name) : malformed('{ "name": "…" }');
    }
    case 'delete':
      return deleteSchema.safeParse(body).success ? book.remove(keys, id) : malformed('{}');
    case 'plan': {
      const asked = planSchema.safeParse(body);
      const command = parseCommand(asked.data?.command);
      if (!command.ok) return refusal(400, command.error.reason);
      if (isAmendment(command.value)) return book.amend(keys, id, command.value);
      return malformed('a command setAction, dropAction or setGoal');
    }
    default:
      return refusal(404, 'There is nothing at this address.');
  }
}

function idOf({ params }: Request): string {
  const { id } = params;
  return typeof id === 'string' ? id : '';
}

/** From the headers alone: addresses are written down by browsers and proxies. */
function keysOf(request: Request): Result<Keys, Refusal> {
  const runs = (request.get('Kilter-Keys') ?? '')
    .split(',')
    .map((key) => key.trim())
    .filter((key) => key !== '');
  if (runs.length > MOST_KEYS) return refusal(400, `At most ${MOST_KEYS} keys are looked at in one request.`);
  return { ok: true, value: { runs, administrator: request.get('Kilter-Administrator') } };
}

function malformed(expected: string): Result<never, Refusal> {
  return refusal(400, `The body of the request has to be ${expected}.`);
}

function refusal(status: number, reason: string): { readonly ok: false; readonly error: Refusal } {
  return { ok: false, error: { status, reason } };
}

function asObject(value: unknown): object {
  return typeof value === 'object' && value !== null ? value : {};
}
