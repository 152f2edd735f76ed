import type { IncomingMessage } from 'node:http';
import express, { type Application, type Request, type Response } from 'express';
import { nanoid } from 'nanoid';
import { z } from 'zod';
import { PolledSocket } from '../lines/index.ts';
import {
  LARGEST_WRITE,
  LINE_HEADERS,
  LINE_PATHS,
  packFrames,
  unpackFrames,
  type OpenedLine,
  type Reading,
} from '../messages/index.ts';
import { LARGEST_BODY } from './guard.ts';
import type { Tally } from './tally.ts';

const name = z.string().regex(/^[\w-]{1,64}$/);
const openingSchema = z.strictObject({
  room: z
    .string()
    .regex(/^[\w-]{1,64}\/[\w-]{1,64}$/)
    .exactOptional(),
  session: name.exactOptional(),
});

/** Lines to tables over plain requests, for networks that cut WebSockets. `takeIn`: hands a new line to whoever takes those of WebSockets too. */
export function serveLines(
  app: Application,
  { takeIn, tally }: { readonly takeIn: (line: PolledSocket, request: IncomingMessage) => void; readonly tally: Tally },
): void {
  const lines = new Map<string, PolledSocket>();
  const json = express.json({ limit: LARGEST_BODY, strict: true });
  const bytes = express.raw({ type: 'application/octet-stream', limit: LARGEST_WRITE });

  app.post(`/${LINE_PATHS.open}`, json, (request, response) => {
    const opening = openingSchema.safeParse(request.body);
    if (!opening.success) return refuse(response, 400, 'The request does not say which line it wants.');
    const line = new PolledSocket();
    // counted with those of WebSockets
    if (!tally.add(request.get('x-real-ip') ?? '', line)) {
      line.terminate();
      return refuse(response, 429, 'Too many lines from this address.');
    }
    const id = nanoid();
    lines.set(id, line);
    line.once('close', () => void lines.delete(id));
    const { room, session = '' } = opening.data;
    request.url = room === undefined ? '/' : `/${room}?sessionId=${session}`;
    takeIn(line, request);
    const opened: OpenedLine = { line: id };
    response.setHeader('Cache-Control', 'no-store');
    response.json(opened);
  });

  /** What is asked on a line that is open. */
  const onLine =
    (act: (line: PolledSocket, request: Request, response: Response) => void) =>
    (request: Request, response: Response): void => {
      response.setHeader('Cache-Control', 'no-store');
      const line = lines.get(request.get(LINE_HEADERS.line) ?? '');
      if (line === undefined) refuse(response, 410, 'There is no such line.');
      else act(line, request, response);
    };
  app.post(
    `/${LINE_PATHS.read}`,
    onLine((line, request, response) => {
      // a client of ours breaks off no read: what it was to be told is lost
      response.once('close', () => {
        if (!response.writableFinished) line.terminate();
      });
      void line.read(turnOf(request)).then((reading) => answerRead(response, reading));
    }),
  );
  app.post(
    `/${LINE_PATHS.write}`,
    bytes,
    onLine((line, request, response) => {
      const body: unknown = request.body;
      line.write(turnOf(request), body instanceof Uint8Array ? unpackFrames(body) : undefined);
      response.status(204).end();
    }),
  );
  app.post(
    `/${LINE_PATHS.end}`,
    onLine((line, _request, response) => {
      line.terminate();
      response.status(204).end();
    }),
  );
}

function answerRead(response: Response, { frames, ended }: Reading): void {
  if (ended !== undefined)
    response.setHeader(LINE_HEADERS.ended, `${ended.code} ${encodeURIComponent(ended.reason)}`.trim());
  response.type('application/octet-stream').send(Buffer.from(packFrames(frames).buffer));
}

function turnOf(request: Request): number {
  const text = request.get(LINE_HEADERS.turn) ?? '';
  return /^\d{1,9}$/.test(text) ? Number(text) : -1;
}

function refuse(response: Response, status: number, reason: string): void {
  response.status(status).json({ code: status, error: reason });
}
